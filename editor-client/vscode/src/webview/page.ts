// Runs in the web view around the page. The page itself has no script: it lives in a frame that allows none.
import { bestMatch } from '../plain/follow.js';

interface State { readonly scroll: number; readonly uri: string }
interface Editor { getState(): State | undefined; setState(state: State): void }
declare function acquireVsCodeApi(): Editor;
interface Update { readonly kind: 'page'; readonly html: string; readonly uri: string }
interface Follow { readonly kind: 'follow'; readonly line: string; readonly day: string | null; readonly moved: boolean }

const places = 'tbody tr, li, dd, blockquote, main p, dt';
const editor = acquireVsCodeApi();
const frame = document.querySelector('iframe')!;
let uri = editor.getState()?.uri ?? '';
let wanted: Follow | null = null;

window.addEventListener('message', (event: MessageEvent<Update | Follow>) => {
  const message = event.data;
  if (message.kind === 'page') {
    show(message);
  } else if (message.kind === 'follow') {
    wanted = message;
    mark(message.moved);
  }
});
// the page follows the editor's theme, not the system's
new MutationObserver(() => dress()).observe(document.body, { attributes: true, attributeFilter: ['class'] });

/** The first page is loaded with its own policy; later ones take the place of its body, so that the reader's place stays. */
function show({ html, uri: shown }: Update): void {
  const another = uri !== '' && uri !== shown;
  uri = shown;
  const inside = frame.contentDocument;
  if (frame.dataset['loaded'] !== 'yes' || inside === null) {
    frame.dataset['loaded'] = 'yes';
    frame.addEventListener('load', () => {
      dress();
      scrollTo(another ? 0 : editor.getState()?.scroll ?? 0);
      mark(wanted?.moved === true);
      keep();
      frame.contentWindow?.addEventListener('scroll', keep);
    }, { once: true });
    frame.srcdoc = html;
    return;
  }
  // its style differs in the printed foot alone, and is not among those that the frame allows
  const next = new DOMParser().parseFromString(html.replace(/<style>[^<]*<\/style>/, ''), 'text/html');
  const anchor = another ? null : firstInSight(inside);
  const scroll = frame.contentWindow?.scrollY ?? 0;
  inside.title = next.title;
  inside.body.replaceWith(inside.adoptNode(next.body));
  scrollTo(another ? 0 : scroll);
  if (anchor !== null) {
    // what was added above the reader's place must not push it away
    const same = [...inside.querySelectorAll(anchor.tag)].filter((one) => one.textContent === anchor.text).map((one) => one.getBoundingClientRect().top - anchor.top);
    const shift = same.sort((a, b) => Math.abs(a) - Math.abs(b))[0] ?? 0;
    scrollTo((frame.contentWindow?.scrollY ?? 0) + shift);
  }
  keep();
  mark(false);
}

const keep = (): void => editor.setState({ scroll: frame.contentWindow?.scrollY ?? 0, uri });
const scrollTo = (top: number): void => frame.contentWindow?.scrollTo({ top, behavior: 'instant' });

/** The first text that the reader sees whole, and where it stands; null at the top, which stays the top. */
function firstInSight(inside: Document): { readonly tag: string; readonly text: string; readonly top: number } | null {
  if ((frame.contentWindow?.scrollY ?? 0) === 0) {
    return null;
  }
  for (const one of inside.querySelectorAll<HTMLElement>(`${places}, h2, h3`)) {
    const { top, height } = one.getBoundingClientRect();
    if (top >= 0 && height > 0) {
      return { tag: one.tagName, text: one.textContent ?? '', top };
    }
  }
  return null;
}

/** Marks what the page says of the line under the cursor; brings it into sight only where the cursor was moved there. */
function mark(scroll: boolean): void {
  const inside = frame.contentDocument;
  if (inside === null || wanted === null) {
    return;
  }
  const all = [...inside.querySelectorAll<HTMLElement>(places)];
  const found = all[bestMatch(wanted.line, wanted.day, all.map((place) => place.textContent ?? ''))] ?? null;
  for (const one of all) {
    if (one !== found && one.style.outline !== '') {
      one.removeAttribute('style');
    }
  }
  if (found === null) {
    return;
  }
  found.style.outline = `2px solid ${getComputedStyle(document.body).getPropertyValue('--vscode-focusBorder') || 'currentColor'}`;
  found.style.outlineOffset = '2px';
  const box = found.getBoundingClientRect();
  if (scroll && (box.top < 0 || box.bottom > frame.clientHeight)) {
    found.scrollIntoView({ block: 'center', behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
  }
}

/** The page's own dark colours where the editor is dark: its rule asks the system, which may be light. */
function dress(): void {
  const dark = !/vscode-light|vscode-high-contrast-light/.test(document.body.className);
  frame.style.colorScheme = dark ? 'dark' : 'light';
  for (const sheet of frame.contentDocument?.styleSheets ?? []) {
    for (const rule of sheet.cssRules) {
      const { media } = rule as Partial<CSSMediaRule>;
      if (media !== undefined && /prefers-color-scheme|^not all$|^all$/.test(media.mediaText)) {
        media.mediaText = dark ? 'all' : 'not all';
      }
    }
  }
  frame.contentDocument?.documentElement.style.setProperty('color-scheme', dark ? 'dark' : 'light');
}
