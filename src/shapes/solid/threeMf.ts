/**
 * 3MF: 3MF Consortium, 3MF Core Specification 1.3: a zip (Open Packaging Conventions) with types, relations and one model in millimetres, each
 * part an object of its own with its name.
 */
import { strToU8, zipSync } from 'fflate'
import type { SolidMesh } from '../../base/answers/madePart.ts'

export interface NamedMesh {
  name: string
  mesh: SolidMesh
}

const types = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`
const relations = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`

const escaped = (s: string) =>
  s.replace(/[&<>"']/g, (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' })[c]!)

/** to a tenth of a micron, finer than any printer */
const inMillimetres = (x: number) => Math.round(1e7 * x) / 1e4

/** A 3MF file of parts by name, in millimetres, side by side as they come. RangeError without a part. */
export function write3mf(parts: readonly NamedMesh[]): Uint8Array<ArrayBuffer> {
  if (parts.length === 0) throw new RangeError('parts: none to write')
  const objects = parts.map(({ name, mesh }, i) => {
    const { corners, triangles } = mesh
    const vertices: string[] = []
    for (let k = 0; k < corners.length; k += 3)
      vertices.push(
        `<vertex x="${inMillimetres(corners[k]!)}" y="${inMillimetres(corners[k + 1]!)}" z="${inMillimetres(corners[k + 2]!)}"/>`,
      )
    const faces: string[] = []
    for (let k = 0; k < triangles.length; k += 3)
      faces.push(`<triangle v1="${triangles[k]}" v2="${triangles[k + 1]}" v3="${triangles[k + 2]}"/>`)
    return `<object id="${i + 1}" type="model" name="${escaped(name)}"><mesh><vertices>${vertices.join('')}</vertices><triangles>${faces.join('')}</triangles></mesh></object>`
  })
  const items = parts.map((_, i) => `<item objectid="${i + 1}"/>`)
  const model = `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en-GB" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><metadata name="Title">${escaped(parts.map((p) => p.name).join(', '))}</metadata><resources>${objects.join('')}</resources><build>${items.join('')}</build></model>`
  // a fixed date: the same part is the same file
  const mtime = new Date(Date.UTC(2000, 0, 1, 12))
  return zipSync(
    {
      '[Content_Types].xml': strToU8(types),
      '_rels/.rels': strToU8(relations),
      '3D/3dmodel.model': strToU8(model),
    },
    { level: 6, mtime },
  ) as Uint8Array<ArrayBuffer>
}
