/** Another PDF library than the one that wrote a file reads it: words, shapes, structure, links. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadPage {
  width: number
  height: number
  /** words in the order they were written, where each begins, and how far it runs across the page, points */
  words: readonly { text: string; x: number; y: number; width: number }[]
  /** bounding boxes of drawn paths: left, bottom, right, top, points */
  paths: readonly (readonly [number, number, number, number])[]
  /** roles of the structure tree and what pictures say */
  roles: readonly { role: string; alt?: string }[]
  links: number
}

interface TreeNode {
  role?: string
  alt?: string
  children?: TreeNode[]
}

/** what is written upright runs up, not across */
const across = ({ transform, width }: { transform: number[]; width: number }): number => {
  const [a, b] = transform as [number, number]
  return (width * a) / Math.hypot(a, b)
}

export async function readPdf(
  bytes: Uint8Array,
): Promise<{ pages: ReadPage[]; outline: string[]; title: string }> {
  const document = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
  const pages: ReadPage[] = []
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    const operators = await page.getOperatorList()
    const paths: [number, number, number, number][] = []
    operators.fnArray.forEach((fn, i) => {
      if (fn !== OPS.constructPath) return
      const box = operators.argsArray[i]?.[2] as ArrayLike<number> | undefined
      if (box) paths.push([box[0]!, box[1]!, box[2]!, box[3]!])
    })
    const tree = (await page.getStructTree()) as TreeNode | null
    const roles: { role: string; alt?: string }[] = []
    const walk = (node: TreeNode) => {
      if (node.role)
        roles.push(node.alt === undefined ? { role: node.role } : { role: node.role, alt: node.alt })
      node.children?.forEach(walk)
    }
    if (tree) walk(tree)
    pages.push({
      width,
      height,
      words: items.flatMap((item) =>
        'str' in item && item.str !== ''
          ? [
              {
                text: item.str,
                x: item.transform[4] as number,
                y: item.transform[5] as number,
                width: across(item),
              },
            ]
          : [],
      ),
      paths,
      roles,
      links: (await page.getAnnotations()).length,
    })
  }
  const outline = ((await document.getOutline()) ?? []).map((o) => o.title)
  const { info } = await document.getMetadata()
  await document.loadingTask.destroy()
  return { pages, outline, title: String((info as { Title?: string }).Title ?? '') }
}
