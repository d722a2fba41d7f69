// What is read aloud of a part of a page: its words as they are seen at one level, the same in the build and in the browser.
import { readAs } from './soundKey.ts';
import type { Level } from './tell.ts';

/** How to look at the nodes of a page, whoever has parsed it. */
export interface Sight<Node> {
  /** The text of a text node, else null. */
  readonly textOf: (node: Node) => string | null;
  /** An element's name in small letters; empty for what is none. */
  readonly nameOf: (node: Node) => string;
  readonly attributeOf: (node: Node, name: string) => string | null;
  readonly within: (node: Node) => Iterable<Node>;
}

const NEVER_READ = new Set(['svg', 'script', 'style', 'template', 'noscript', 'math']);
// Such elements stand apart from the words around them.
const APART = new Set(
  'address article blockquote br button dd div dl dt figcaption figure h1 h2 h3 h4 li ol p section summary table td th tr ul'.split(
    ' ',
  ),
);

/**
 * The words of an element at a level: without drawings, what is hidden, what is for the other level, and what is read
 * on its own (`data-read` inside). The element itself counts whether it is shown or not.
 */
export function readText<Node>(root: Node, level: Level, sight: Sight<Node>): string {
  const { textOf, nameOf, attributeOf, within } = sight;
  const isRead = (node: Node): boolean => {
    const only = attributeOf(node, 'data-for');
    return (
      !NEVER_READ.has(nameOf(node)) &&
      attributeOf(node, 'aria-hidden') !== 'true' &&
      attributeOf(node, 'hidden') === null &&
      attributeOf(node, 'data-read') === null &&
      (only === null || only === level)
    );
  };
  const words = (node: Node): string => {
    let said = '';
    let follows = false;
    for (const one of within(node)) {
      const text = textOf(one);
      // Marks that a framework leaves between elements are no text.
      if (text === '' || (text === null && nameOf(one) === '')) continue;
      if (text === null && !isRead(one)) continue;
      // Two elements side by side are laid out apart, though nothing stands between them in the page's text.
      if (text === null && (follows || APART.has(nameOf(one)))) said += ' ';
      said += text ?? words(one);
      if (text === null && APART.has(nameOf(one))) said += ' ';
      follows = text === null;
    }
    return said;
  };
  return readAs(words(root));
}
