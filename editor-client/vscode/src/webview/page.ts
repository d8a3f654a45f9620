// Runs in the web view around the page. The page itself has no script: it lives in a frame that allows none.
import { bestMatch } from '../plain/follow.js';

interface Editor { getState(): { scroll?: number } | undefined; setState(state: { scroll: number; uri: string }): void }
declare function acquireVsCodeApi(): Editor;
interface Update { readonly kind: 'page'; readonly html: string; readonly uri: string }
interface Follow { readonly kind: 'follow'; readonly line: string; readonly day: string | null }

const editor = acquireVsCodeApi();
const frame = document.querySelector('iframe')!;
let uri = '';
/** The words that the page was last brought to. */
let followed = '';
let wanted: Follow | null = null;

window.addEventListener('message', (event: MessageEvent<Update | Follow>) => {
  const message = event.data;
  if (message.kind === 'page') {
    show(message);
  } else if (message.kind === 'follow') {
    wanted = message;
    follow(message);
  }
});

/** The first page is loaded with its own policy; later ones take the place of its body, so that the reader's place stays. */
function show({ html, uri: shown }: Update): void {
  const another = uri !== '' && uri !== shown;
  uri = shown;
  const inside = frame.contentDocument;
  if (frame.dataset['loaded'] !== 'yes' || inside === null) {
    frame.dataset['loaded'] = 'yes';
    frame.addEventListener('load', () => {
      frame.contentWindow?.scrollTo(0, editor.getState()?.scroll ?? 0);
      if (wanted !== null) {
        follow(wanted);
      }
      frame.contentWindow?.addEventListener('scroll', () => editor.setState({ scroll: frame.contentWindow?.scrollY ?? 0, uri }));
    }, { once: true });
    frame.srcdoc = html;
    return;
  }
  const next = new DOMParser().parseFromString(html, 'text/html');
  const place = another ? 0 : frame.contentWindow?.scrollY ?? 0;
  inside.title = next.title;
  inside.body.replaceWith(inside.adoptNode(next.body));
  frame.contentWindow?.scrollTo(0, place);
  if (another) {
    followed = '';
  }
  // what was just written is on the page now; where the words are the same as before, the reader's place stays
  if (wanted !== null) {
    follow(wanted);
  }
}

/** Scrolls to what the page says of the line under the cursor, when that is out of sight. */
function follow({ line, day }: Follow): void {
  const inside = frame.contentDocument;
  if (inside === null) {
    return;
  }
  const places = [...inside.querySelectorAll('tbody tr, li, dd, blockquote, main p, dt')];
  const found = places[bestMatch(line, day, places.map((place) => place.textContent ?? ''))] ?? null;
  if (found === null || found.textContent === followed) {
    return;
  }
  followed = found.textContent ?? '';
  const box = found.getBoundingClientRect();
  if (box.top < 0 || box.bottom > frame.clientHeight) {
    found.scrollIntoView({ block: 'center', behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
  }
}
