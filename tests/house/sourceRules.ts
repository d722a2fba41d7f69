// What the house asks of source code, found with TypeScript's own parser.
import ts from 'typescript';
import { scriptsIn } from '../support/sources.ts';

export const MOST_LINES_A_FILE = 300;
export const MOST_LINES_A_FUNCTION = 60;

// Names through which code would reach a clock, chance, the disk, a page or the net.
const IMPURE = new Set([
  'process', 'document', 'window', 'globalThis', 'self', 'navigator', 'localStorage', 'sessionStorage', 'fetch', 'console', 'performance',
  'crypto', 'setTimeout', 'setInterval', 'queueMicrotask', 'requestAnimationFrame', 'require', 'alert', 'XMLHttpRequest', 'WebSocket',
]); // prettier-ignore

function each(source: ts.SourceFile, visit: (node: ts.Node) => void): void {
  const walk = (node: ts.Node): void => {
    visit(node);
    ts.forEachChild(node, walk);
  };
  walk(source);
}

const parsed = (path: string, text: string) =>
  ts.createSourceFile(path.replace(/\.(svelte|astro|mdx)$/, '.ts'), text, ts.ScriptTarget.Latest, true);
const lineOf = (source: ts.SourceFile, pos: number) => source.getLineAndCharacterOfPosition(pos).line + 1;

/** Functions longer than the house allows. */
export function longFunctions(path: string, text?: string): string[] {
  return scriptsIn(path, text).flatMap((script) => {
    const source = parsed(path, script.text);
    const found: string[] = [];
    each(source, (node) => {
      if (!ts.isFunctionLike(node) || !('body' in node) || !node.body) return;
      const first = lineOf(source, node.getStart(source));
      const lines = lineOf(source, node.getEnd()) - first + 1;
      if (lines > MOST_LINES_A_FUNCTION)
        found.push(`${path}:${script.line + first - 1} a function of ${lines} lines`);
    });
    return found;
  });
}

/** Places where code would depend on more than what it is given. */
export function impurities(path: string, text?: string): string[] {
  return scriptsIn(path, text).flatMap((script) => {
    const source = parsed(path, script.text);
    const found: string[] = [];
    each(source, (node) => {
      const what = impurity(node);
      if (what !== null) found.push(`${path}:${lineOf(source, node.getStart(source))} ${what}`);
    });
    return found;
  });
}

function impurity(node: ts.Node): string | null {
  const text = node.getText().replace(/\s+/g, ' ');
  if (ts.isPropertyAccessExpression(node)) return /^(Math\.random|Date\.now)$/.test(text) ? text : null;
  if (ts.isNewExpression(node) && node.expression.getText() === 'Date' && !node.arguments?.length)
    return 'new Date()';
  if (ts.isCallExpression(node) && node.expression.getText() === 'Date') return 'Date()';
  // A format without a date formats now.
  if (ts.isCallExpression(node) && /DateTimeFormat\(.*\)\.format$/.test(node.expression.getText()) && node.arguments.length === 0) return 'format() of now'; // prettier-ignore
  if (!ts.isIdentifier(node) || !IMPURE.has(node.text) || isOwn(node)) return null;
  const { parent } = node;
  const isMember = ts.isPropertyAccessExpression(parent) && parent.name === node;
  const isKey = 'name' in parent && parent.name === node && !ts.isShorthandPropertyAssignment(parent);
  const isPicked = ts.isBindingElement(parent) && parent.propertyName === node;
  return isMember || isKey || isPicked ? null : node.text;
}

/** Whether a name is declared around the place where it stands, as a parameter, a variable or a function. */
function isOwn(name: ts.Identifier): boolean {
  for (let scope: ts.Node = name; scope.parent; scope = scope.parent) {
    const { parent } = scope;
    if (ts.isFunctionLike(parent) && parent.parameters.some((one) => binds(one.name, name.text))) return true;
    if (!ts.isBlock(parent) && !ts.isSourceFile(parent)) continue;
    const declared = parent.statements
      .filter(ts.isVariableStatement)
      .flatMap((one) => [...one.declarationList.declarations]);
    if (declared.some((one) => binds(one.name, name.text))) return true;
  }
  return false;
}

function binds(name: ts.BindingName, text: string): boolean {
  if (ts.isIdentifier(name)) return name.text === text;
  return name.elements.some((one) => ts.isBindingElement(one) && binds(one.name, text));
}

/** Exported functions, types and classes without a doc comment; a constant may share one with its neighbour. */
export function undocumented(path: string, text?: string): string[] {
  return scriptsIn(path, text).flatMap((script) => {
    const source = parsed(path, script.text);
    return source.statements.flatMap((statement) => {
      if (!ts.canHaveModifiers(statement) || ts.isExportDeclaration(statement)) return [];
      const isExported = ts.getModifiers(statement)?.some((one) => one.kind === ts.SyntaxKind.ExportKeyword);
      const isPlain = ts.isVariableStatement(statement) && !/=>|function/.test(statement.getText());
      if (!isExported || isPlain || ts.getJSDocCommentsAndTags(statement).length > 0) return [];
      const name = /^export (?:default |async |function |const |interface |type |class |enum )*(\w+)/.exec(
        statement.getText(),
      )?.[1];
      return [`${path}:${lineOf(source, statement.getStart(source))} ${name ?? 'an export'}`];
    });
  });
}
