/**
 * Lines of attribution as nodes: their text, and links to web addresses where a source brings some. Whatever else its
 * HTML holds is left out.
 */
export function attributionNodes(lines: readonly string[]): Node[] {
  const nodes: Node[] = [];
  for (const line of new Set(lines.map((one) => one.trim()).filter((one) => one !== ''))) {
    if (nodes.length > 0) nodes.push(document.createTextNode(' · '));
    nodes.push(...plain(new DOMParser().parseFromString(line, 'text/html').body));
  }
  return nodes;
}

function plain(from: Node): Node[] {
  return [...from.childNodes].flatMap((node) => {
    if (node.nodeType === Node.TEXT_NODE) return [document.createTextNode(node.textContent ?? '')];
    if (!(node instanceof Element) || /^(script|style)$/i.test(node.nodeName)) return [];
    const href = node.nodeName === 'A' ? node.getAttribute('href') : null;
    if (!href || !/^https?:/i.test(href)) return plain(node);
    const link = document.createElement('a');
    link.href = href;
    link.target = '_blank';
    link.rel = 'noopener';
    link.textContent = node.textContent;
    return [link];
  });
}
