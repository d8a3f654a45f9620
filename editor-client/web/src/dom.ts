// Small helpers: every text becomes a text node, never markup.
export const byId = <T extends HTMLElement = HTMLElement>(id: string): T => document.getElementById(id) as T;

export function make<K extends keyof HTMLElementTagNameMap>(tag: K, props: Partial<HTMLElementTagNameMap[K]> = {}, ...children: (Node | string)[]): HTMLElementTagNameMap[K] {
  const element = Object.assign(document.createElement(tag), props);
  element.append(...children);
  return element;
}

export const button = (text: string, press: () => void, className = ''): HTMLButtonElement => make('button', { type: 'button', className, onclick: press }, text);

/** Says something at the foot of the screen, and to a screen reader. */
export function say(text: string, stays = false): void {
  const line = byId('say');
  line.textContent = text;
  line.dataset['stays'] = String(stays);
  if (!stays) {
    setTimeout(() => { if (line.textContent === text) { line.textContent = ''; } }, 6000);
  }
}

/** Hands a file over: to the system's share sheet where a phone has one, else as a download. */
export async function handOver(name: string, type: string, content: BlobPart): Promise<void> {
  const file = new File([content], name, { type });
  if (matchMedia('(pointer: coarse)').matches && navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file] });
      return;
    } catch (problem) {
      if ((problem as Error).name === 'AbortError') {
        return;
      }
    }
  }
  const address = URL.createObjectURL(file);
  make('a', { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

const allowed = new Set(['P', 'UL', 'OL', 'LI', 'STRONG', 'EM', 'CODE', 'PRE', 'HR', 'BR', 'H1', 'H2', 'H3', 'H4', 'BLOCKQUOTE', 'TABLE', 'THEAD', 'TBODY', 'TR', 'TH', 'TD', 'SPAN', 'DIV']);

/** Markup of a few plain elements without attributes; all else becomes its text. */
export function plainMarkup(html: string): string {
  const body = new DOMParser().parseFromString(html, 'text/html').body;
  for (const element of [...body.querySelectorAll('*')]) {
    if (allowed.has(element.tagName)) {
      [...element.attributes].forEach((attribute) => element.removeAttribute(attribute.name));
    } else if (['SCRIPT', 'STYLE'].includes(element.tagName)) {
      element.remove();
    } else {
      element.replaceWith(...element.childNodes);
    }
  }
  return body.innerHTML;
}
