/** Lines of at most 96 characters, broken at spaces. */
export function wrap(words: string): string[] {
  const lines: string[] = [''];
  for (const word of words.split(' ')) {
    const last = lines.at(-1)!;
    if (last !== '' && last.length + 1 + word.length > 96) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines;
}
