// The attributes of a component in a lesson: plain texts in quotation marks, each of them known.
import type { Nodes } from 'mdast';
import { nearestName } from '../farm/nearest.ts';
import type { Found } from './lessonParts.ts';

/** A component that stands on lines of its own. */
export type FlowElement = Extract<Nodes, { type: 'mdxJsxFlowElement' }>;
/** A component within a line of text. */
export type TextElement = Extract<Nodes, { type: 'mdxJsxTextElement' }>;
/** A component, wherever it stands. */
export type JsxElement = FlowElement | TextElement;

/** Whether an attribute must be there, may be there, or stands alone without a value. */
export type Asked = 'needed' | 'optional' | 'flag';

/** An attribute that is there. A flag's value is empty. */
export interface Given {
  readonly value: string;
  readonly place: { readonly line: number; readonly column: number };
}

/** Reads the attributes of a component; whatever is missing, unknown, doubled or no text becomes a fault. */
export function attributesOf(
  faults: Found[],
  node: JsxElement,
  asked: Readonly<Record<string, Asked>>,
): Record<string, Given> {
  const given: Record<string, Given> = {};
  const { line, column } = node.position?.start ?? { line: 1, column: 1 };
  const names = Object.keys(asked);
  for (const attribute of node.attributes) {
    const at = attribute.position?.start ?? { line, column };
    const place = { line: at.line, column: at.column };
    const told =
      attribute.type === 'mdxJsxAttribute'
        ? attributeFault(attribute.name, attribute.value, node.name, asked, names, given)
        : `<${node.name}> takes no expression in braces; write each attribute as name="text".`;
    if (told) faults.push({ ...place, text: told });
    if (
      attribute.type === 'mdxJsxAttribute' &&
      Object.hasOwn(asked, attribute.name) &&
      !Object.hasOwn(given, attribute.name)
    ) {
      const value = typeof attribute.value === 'string' ? attribute.value.trim() : '';
      // A value that is no text has been told of; what it says is not looked at.
      if (!told) given[attribute.name] = { value, place };
    }
  }
  const named = new Set(node.attributes.map((one) => (one.type === 'mdxJsxAttribute' ? one.name : '')));
  for (const [name, how] of Object.entries(asked))
    if (how === 'needed' && !named.has(name))
      faults.push({ line, column, text: `<${node.name}> needs ${name}="…".` });
  return given;
}

function attributeFault(
  name: string,
  value: unknown,
  component: string | null,
  asked: Readonly<Record<string, Asked>>,
  names: readonly string[],
  given: Readonly<Record<string, Given>>,
): string | null {
  const how = Object.hasOwn(asked, name) ? asked[name] : undefined;
  if (how === undefined) {
    const near = nearestName(name, names);
    const all = names.length > 0 ? `it has ${names.join(', ')}.` : 'it has none.';
    return `<${component}> has no attribute "${name}"; ${near ? `did you mean "${near}"?` : all}`;
  }
  if (Object.hasOwn(given, name)) return `"${name}" stands in this <${component}> twice; take one out.`;
  if (typeof value === 'object' && value !== null)
    return `write ${name}="text" with quotation marks; expressions in braces are not for lessons.`;
  if (how === 'flag') return value === null ? null : `"${name}" stands alone, without a value.`;
  if (typeof value !== 'string' || value.trim() === '')
    return `"${name}" is empty; write ${name}="…" with a text in it.`;
  return null;
}
