// Faults as a coordinator reads them in the terminal.
import { resolve } from 'node:path';
import type { DeskFault } from '../../shared/book/deskState.ts';
import { counted, sortedFaults, type Fault } from './fault.ts';

/**
 * The complete list of what keeps the book from being taken: a line before it, then one line a
 * fault, `file:line:column  found …; expected …; nearest …; do: …`, file by file. Without `dir` where others than
 * the coordinator read it: a path tells of the machine.
 */
export function tellFaults(faults: readonly Fault[], dir: string | null): string {
  const need = `${counted(faults.length, 'thing')} ${faults.length === 1 ? 'needs' : 'need'} a hand`;
  const lines = [
    `The milk book was not taken: ${need}. Nothing was changed.`,
    `${dir === null ? '' : `The farm folder is ${resolve(dir)}. `}Each line says file:line:column.`,
  ];
  let file: string | null = null;
  for (const fault of sortedFaults(faults)) {
    if (fault.file !== file) lines.push('');
    file = fault.file;
    lines.push(`${placeOf(fault)}  ${wordsOf(fault)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** The same faults one by one, in the order in which a person works through them, for a page. */
export function listedFaults(faults: readonly Fault[]): DeskFault[] {
  return sortedFaults(faults).map((fault) => {
    const { file, line, column } = fault;
    return { file: file === '.' ? null : file, line, column, text: wordsOf(fault) };
  });
}

function placeOf({ file, line, column }: Fault): string {
  const name = file === '.' ? 'the farm folder' : file;
  return [name, line, column].filter((part) => part !== null).join(':');
}

function wordsOf({ found, expected, nearest, todo }: Fault): string {
  const near = nearest === null ? [] : [`nearest "${nearest}"`];
  return [`found ${found}`, `expected ${expected}`, ...near, `do: ${todo}`].join('; ');
}
