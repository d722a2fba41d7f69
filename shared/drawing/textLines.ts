// Breaks a short text into lines for a drawing, where nothing else breaks them.

/**
 * Lines of at most `most` letters, broken between words; a longer word keeps a line to itself. White space is
 * one space. An empty text gives no lines.
 *
 * @example textLines('for the kids to drink', 12) // ['for the kids', 'to drink']
 */
export function textLines(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
