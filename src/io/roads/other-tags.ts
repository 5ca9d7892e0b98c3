/** Tags packed in one text as `"key"=>"value","key"=>"value"`, the way map converters write what has no column of its own. */
export function parseOtherTags(text: string): Record<string, string> {
  const tags: Record<string, string> = {};
  for (const [, key, value] of text.matchAll(/"((?:[^"\\]|\\.)*)"=>"((?:[^"\\]|\\.)*)"/g)) {
    tags[unquote(key!)] = unquote(value!);
  }
  return tags;
}

const unquote = (text: string): string => text.replace(/\\(.)/g, '$1');
