/** Elements of a page that have no content and no closing tag (HTML, section 13.1.2), of those that our pages use. */
const VOID = new Set(["meta", "br", "hr", "img", "link"]);

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
};

/** What XML 1.0 allows no document to hold (production 2), lone surrogates included. */
const NO_XML = /[^\t\n\r\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

const escaped = (text: string): string =>
  text.replace(NO_XML, "\u{FFFD}").replace(/[&<>"]/g, (letter) => ENTITIES[letter]);

const isElement = (node: Node): node is Element => node.nodeType === 1;
const isText = (node: Node): boolean => node.nodeType === 3;

/**
 * An element as text that both an XML and an HTML reader take: what a document's own `outerHTML` writes is well-formed
 * XML only as long as no attribute holds `<` or `&`. Comments are left out.
 *
 * @param element of a drawing or a page, in a browser or elsewhere
 */
export const markup = (element: Element): string => {
  const name = element.localName;
  const attributes = Array.from(element.attributes, (one) => ` ${one.name}="${escaped(one.value)}"`).join("");
  if (VOID.has(name)) return `<${name}${attributes}/>`;
  // Style sheets of a page are read as they stand; those of a drawing, like any of its text.
  const raw = name === "style" && element.namespaceURI === "http://www.w3.org/1999/xhtml";
  const inside = Array.from(element.childNodes, (node) => {
    if (isElement(node)) return markup(node);
    if (!isText(node)) return "";
    return raw ? (node.textContent ?? "") : escaped(node.textContent ?? "");
  }).join("");
  return `<${name}${attributes}>${inside}</${name}>`;
};
