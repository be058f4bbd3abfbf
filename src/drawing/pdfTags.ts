/**
 * What a page's marks are, for screen readers: a structure tree beside the pages, links that can be followed and an outline.
 * ISO 32000-1:2008, 14.6 (marked content), 14.7 (logical structure), 14.8 (tagged PDF), 12.3.3 (outline), 12.5.6.5 (links).
 */
import type { PDFDict, PDFDocument, PDFName, PDFPage, PDFRef } from '@cantoo/pdf-lib'
import { point } from './pdfShapes.ts'
import type { PagePlace, PageTag } from './sheet.ts'

type Lib = typeof import('@cantoo/pdf-lib')

export interface PdfTags {
  /** marks from here on are one thing, or decoration where there is no tag */
  begin(page: PDFPage, tag: PageTag | undefined): void
  end(page: PDFPage): void
  place(page: PDFPage, place: PagePlace): void
  /** writes the tree, the links and the outline; RangeError for a link to a place that is nowhere */
  finish(): void
}

interface Element {
  ref: PDFRef
  dict: PDFDict
  kids: (PDFRef | number)[]
  page?: PDFRef
}

interface Link {
  page: PDFPage
  element: Element
  leads: NonNullable<PageTag['leads']>
  alt: string
}

/** The tree of one document. */
export function pdfTags(lib: Lib, document: PDFDocument): PdfTags {
  const { context } = document
  const name = (of: string): PDFName => lib.PDFName.of(of)
  const words = (of: string) => lib.PDFHexString.fromText(of)
  const root = context.obj({ Type: 'StructTreeRoot' }) as PDFDict
  const rootRef = context.register(root)
  const elements: Element[] = []
  const add = (role: string, parent: Element | undefined): Element => {
    const dict = context.obj({ Type: 'StructElem', S: role, P: parent?.ref ?? rootRef }) as PDFDict
    const element: Element = { ref: context.register(dict), dict, kids: [] }
    parent?.kids.push(element.ref)
    elements.push(element)
    return element
  }
  const whole = add('Document', undefined)
  /** for each page its elements by the number of the marked content */
  const marked: PDFRef[][] = []
  const numbers = new Map<PDFPage, number>()
  const links: Link[] = []
  const places = new Map<string, { page: PDFPage; y: number; title?: string; depth: number }>()
  /** what is open across marks: a list, a table, a row of it */
  let list: Element | undefined
  let table: { number: number; element: Element; row: number; line: Element } | undefined

  const numberOf = (page: PDFPage): number => {
    let n = numbers.get(page)
    if (n === undefined) {
      n = numbers.size
      numbers.set(page, n)
      marked.push([])
      page.node.set(name('StructParents'), context.obj(n))
      page.node.set(name('Tabs'), name('S'))
    }
    return n
  }
  const put = (page: PDFPage, operator: string, parts: string[]) =>
    page.pushOperators(lib.PDFOperator.of(operator as never, parts))

  /** the element that holds a tag's marks */
  const elementFor = (tag: PageTag): Element => {
    const { role, table: number, row = 0 } = tag
    if (role === 'LI') {
      list ??= add('L', whole)
      table = undefined
      return add('LBody', add('LI', list))
    }
    list = undefined
    if ((role === 'TH' || role === 'TD') && number !== undefined) {
      if (table?.number !== number) {
        const element = add('Table', whole)
        table = { number, element, row, line: add('TR', element) }
      } else if (table.row !== row) {
        table.row = row
        table.line = add('TR', table.element)
      }
      const cell = add(role, table.line)
      if (role === 'TH') cell.dict.set(name('A'), context.obj({ O: 'Table', Scope: 'Column' }))
      return cell
    }
    table = undefined
    return add(role, whole)
  }

  return {
    begin(page, tag) {
      const n = numberOf(page)
      if (!tag) {
        put(page, 'BMC', ['/Artifact'])
        return
      }
      const parent = elementFor(tag)
      const element = tag.leads ? add('Link', parent) : parent
      const id = marked[n]!.length
      marked[n]!.push(element.ref)
      element.kids.push(id)
      element.page = page.ref
      if (tag.alt !== undefined) element.dict.set(name('Alt'), words(tag.alt))
      if (tag.leads) links.push({ page, element, leads: tag.leads, alt: tag.alt ?? '' })
      put(page, 'BDC', [`/${tag.role}`, `<</MCID ${id}>>`])
    },
    end(page) {
      put(page, 'EMC', [])
    },
    place(page, { name: of, y, title, depth = 1 }) {
      places.set(of, { page, y, depth, ...(title === undefined ? {} : { title }) })
    },
    finish() {
      let next = numbers.size
      const parents: (number | PDFRef)[] = []
      marked.forEach((own, n) => {
        parents.push(n, context.register(context.obj(own)))
      })
      for (const { page, element, leads, alt } of links) {
        const to = places.get(leads.to)
        if (!to) throw new RangeError(`link: "${leads.to}" is no place of this document`)
        const [x0, y0] = [leads.x * point, leads.y * point]
        const dict = context.obj({
          Type: 'Annot',
          Subtype: 'Link',
          Rect: [x0, y0, x0 + leads.w * point, y0 + leads.h * point],
          Border: [0, 0, 0],
          F: 4,
          Dest: [to.page.ref, 'XYZ', null, to.y * point, null],
          StructParent: next,
        }) as PDFDict
        dict.set(name('Contents'), words(alt || 'leads to another page of this document'))
        const ref = context.register(dict)
        page.node.addAnnot(ref)
        const reference = context.obj({ Type: 'OBJR', Obj: ref, Pg: page.ref }) as PDFDict
        element.kids.push(context.register(reference))
        parents.push(next++, element.ref)
      }
      for (const { dict, kids, page } of elements) {
        dict.set(name('K'), context.obj(kids as never))
        if (page) dict.set(name('Pg'), page)
      }
      root.set(name('K'), whole.ref)
      root.set(name('ParentTree'), context.register(context.obj({ Nums: parents as never })))
      root.set(name('ParentTreeNextKey'), context.obj(next))
      const { catalog } = document
      catalog.set(name('StructTreeRoot'), rootRef)
      catalog.set(name('MarkInfo'), context.obj({ Marked: true }))
      outline()
    },
  }

  /** Titles of places, one level under another. */
  function outline() {
    const titled = [...places.values()].filter((p) => p.title !== undefined)
    if (titled.length === 0) return
    interface Node {
      dict: PDFDict
      ref: PDFRef
      depth: number
      kids: Node[]
    }
    const make = (depth: number, of: Record<string, unknown>): Node => {
      const dict = context.obj(of as never) as unknown as PDFDict
      return { dict, ref: context.register(dict), depth, kids: [] }
    }
    const top = make(0, { Type: 'Outlines' })
    const open = [top]
    const all: Node[] = [top]
    for (const { page, y, title, depth } of titled) {
      while (open.at(-1)!.depth >= depth) open.pop()
      const node = make(depth, { Dest: [page.ref, 'XYZ', null, y * point, null] })
      node.dict.set(name('Title'), words(title!))
      node.dict.set(name('Parent'), open.at(-1)!.ref)
      open.at(-1)!.kids.push(node)
      open.push(node)
      all.push(node)
    }
    for (const { dict, kids, depth } of all) {
      kids.forEach((kid, i) => {
        if (i > 0) kid.dict.set(name('Prev'), kids[i - 1]!.ref)
        if (i + 1 < kids.length) kid.dict.set(name('Next'), kids[i + 1]!.ref)
      })
      if (kids.length === 0) continue
      dict.set(name('First'), kids[0]!.ref)
      dict.set(name('Last'), kids.at(-1)!.ref)
      // chapters are open, what is in them is folded
      dict.set(name('Count'), context.obj(depth === 0 ? kids.length : -kids.length))
    }
    document.catalog.set(name('Outlines'), top.ref)
    document.catalog.set(name('PageMode'), name('UseOutlines'))
  }
}
