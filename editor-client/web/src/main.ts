import { autocompletion, acceptCompletion, completionKeymap } from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap } from '@codemirror/commands';
import { indentService } from '@codemirror/language';
import { lintGutter, lintKeymap } from '@codemirror/lint';
import { hoverTooltips, LSPClient, LSPPlugin, formatDocument, formatKeymap, renameKeymap, renameSymbol, serverCompletion, serverDiagnostics, type Transport } from '@codemirror/lsp-client';
import { EditorState } from '@codemirror/state';
import { drawSelection, EditorView, keymap } from '@codemirror/view';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { button, byId, handOver, make, plainMarkup, say } from './dom.js';
import { dayOf, lineInto, type Insertion } from './entry.js';
import { drawnAnew } from './photo.js';
import { shown } from './shown.js';
import * as store from './store.js';
import type { ToServer } from './serve.js';
import { walk, type Step } from './walk.js';

const folder = '/notes/';
const uriOf = (name: string): string => `file://${folder}${encodeURIComponent(name)}`;
const today = new URL(location.href).searchParams.get('today') ?? '';
const day = (): string => today || dayOf(new Date());

// --- the server ---
const worker = new Worker('worker.js', { type: 'module', name: today });
const tell = (message: ToServer): void => worker.postMessage(message);
const listeners = new Set<(message: string) => void>();
worker.onmessage = (event: MessageEvent<string>) => listeners.forEach((listener) => listener(event.data));
worker.onerror = () => say('The checks did not start. Your note is kept; reload the page to try again.', true);
const transport: Transport = { send: tell, subscribe: (one) => { listeners.add(one); }, unsubscribe: (one) => { listeners.delete(one); } };

interface Position { line: number; character: number }
interface Range { start: Position; end: Position }
interface Diagnostic { range: Range; severity: number; code: string; message: string; data?: { level: string } }
interface TextEdit { range: Range; newText: string }
interface WorkspaceEdit { changes?: Record<string, TextEdit[]>; documentChanges?: { edits: TextEdit[] }[] }
interface CodeAction { title: string; edit?: WorkspaceEdit; data?: unknown }
interface Symbol { name: string; detail?: string; range: Range; selectionRange: Range; children?: Symbol[] }

let problems: Diagnostic[] = [];
const client = new LSPClient({
  timeout: 60_000,
  sanitizeHTML: plainMarkup,
  extensions: [
    serverDiagnostics(), serverCompletion({ override: true }), hoverTooltips(),
    { clientCapabilities: {
      textDocument: {
        codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } }, dataSupport: true, resolveSupport: { properties: ['edit'] } },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      },
    } },
  ],
  notificationHandlers: {
    'textDocument/publishDiagnostics': (_, params: { uri: string; diagnostics: Diagnostic[] }) => {
      if (params.uri === uriOf(current?.name ?? '')) {
        problems = params.diagnostics;
        const count = problems.filter((one) => one.severity < 4).length;
        byId('problems-open').textContent = `Problems (${count})`;
        byId('problems-open').setAttribute('aria-label', `Problems: ${count}`);
      }
      return false;
    },
    'window/showMessage': (_, params: { message: string }) => { say(params.message); return true; },
  },
});
client.connect(transport);
const ask = <T>(method: string, params: object): Promise<T> => { client.sync(); return client.request<object, T>(method, params); };
const here = (): { textDocument: { uri: string } } => ({ textDocument: { uri: uriOf(current!.name) } });

// --- the note ---
let current: store.Note | null = null;
let view: EditorView | null = null;
let unsaved = false;
let saving: Promise<void> = Promise.resolve();
let letGo = (): void => { /* no note yet */ };

async function save(): Promise<void> {
  if (current === null || view === null || !unsaved) {
    return;
  }
  unsaved = false;
  const kept: store.Note = { ...current, text: view.state.doc.toString(), changed: Date.now() };
  current = kept;
  try {
    await store.keepNote(kept);
    byId('state').textContent = 'kept on this device';
  } catch {
    unsaved = true;
    byId('state').textContent = 'not saved';
    say('The note is not saved: this browser has no room left. Export it now.', true);
    return;
  }
  if (kept.handle !== undefined) {
    try {
      const file = await kept.handle.createWritable();
      await file.write(kept.text);
      await file.close();
      byId('state').textContent = 'saved in its file';
    } catch {
      byId('state').textContent = 'kept here, not in its file';
    }
  }
}

let saveTimer = 0;
function saveSoon(): void {
  unsaved = true;
  byId('state').textContent = 'saving';
  clearTimeout(saveTimer);
  saveTimer = setTimeout(() => { saving = saving.then(save); }, 200) as unknown as number;
}
document.addEventListener('visibilitychange', () => { saving = saving.then(save); });
window.addEventListener('pagehide', () => { void save(); });

/** One tab writes a note; another one shows it. */
async function lock(name: string): Promise<boolean> {
  letGo();
  return new Promise((resolve) => {
    void navigator.locks.request(`hnote:${name}`, { ifAvailable: true }, (held) => {
      resolve(held !== null);
      return held === null ? undefined : new Promise<void>((release) => { letGo = release; });
    });
  });
}

async function open(name: string): Promise<void> {
  await saving;
  await save();
  const found = await store.note(name);
  if (found === undefined) {
    return;
  }
  const mine = await lock(name);
  view?.destroy();
  problems = [];
  current = found;
  localStorage.setItem('last', name);
  byId('name').textContent = name.replace(/\.hnote$/, '');
  byId('state').textContent = mine ? 'kept on this device' : 'open in another tab: here you can only read it';
  view = new EditorView({
    parent: byId('editor'),
    state: EditorState.create({
      doc: found.text,
      extensions: [
        history(), drawSelection(), lintGutter(), EditorView.lineWrapping, shown,
        // Enter ends a line and Tab takes a word: a list that is a few letters behind must not exchange one
        autocompletion({ activateOnTyping: true, defaultKeymap: false }),
        EditorState.readOnly.of(!mine),
        indentService.of((context, at) => {
          const line = context.lineAt(at, -1).text;
          return /^\d/.test(line) ? 2 : /^\s*/.exec(line)![0].length;
        }),
        EditorView.contentAttributes.of({ 'aria-label': `Note ${name}`, autocapitalize: 'off', autocorrect: 'off', spellcheck: 'false' }),
        keymap.of([{ key: 'Tab', run: acceptCompletion }, ...completionKeymap.filter((one) => one.key !== 'Enter'), ...formatKeymap, ...renameKeymap, ...lintKeymap, ...historyKeymap, ...defaultKeymap]),
        client.plugin(uriOf(name), 'hnote'),
        EditorView.updateListener.of((update) => {
          if (update.docChanged) {
            saveSoon();
            pageSoon();
          }
        }),
      ],
    }),
  });
  byId('start').hidden = true;
  pageSoon();
}

const put = (change: Insertion): void => view?.dispatch({ changes: change, selection: { anchor: change.from + change.insert.length }, scrollIntoView: true, userEvent: 'input' });

function go(position: Position): void {
  const plugin = view === null ? null : LSPPlugin.get(view);
  if (view !== null && plugin !== null) {
    view.dispatch({ selection: { anchor: plugin.fromPosition(position) }, scrollIntoView: true });
    view.focus();
  }
}

function apply(edit: WorkspaceEdit): void {
  const plugin = view === null ? null : LSPPlugin.get(view);
  const edits = edit.documentChanges?.flatMap((one) => one.edits) ?? Object.values(edit.changes ?? {}).flat();
  if (view !== null && plugin !== null) {
    view.dispatch({ changes: edits.map((one) => ({ from: plugin.fromPosition(one.range.start), to: plugin.fromPosition(one.range.end), insert: one.newText })), userEvent: 'input' });
  }
}

// --- sheets ---
const show = (id: string): void => byId<HTMLDialogElement>(id).showModal();
const hide = (id: string): void => byId<HTMLDialogElement>(id).close();
for (const dialog of document.querySelectorAll('dialog')) {
  dialog.querySelector('.close')?.addEventListener('click', () => dialog.close());
  dialog.addEventListener('click', (event) => { if (event.target === dialog) { dialog.close(); } });
}

// the gravest first
const levels: Record<string, string> = { urgent: 'Phone now', call: 'Phone the clinic', error: 'Not understood', watch: 'Keep an eye on', info: 'For information' };
const rank = (problem: typeof problems[number]): number => Object.keys(levels).indexOf(problem.data?.level ?? '');
byId('problems-open').onclick = () => {
  const list = byId('problems-list');
  list.replaceChildren(...(problems.length === 0 ? [make('li', {}, 'No findings. This does not mean that your pet is healthy: a note only holds what was looked at.')] : problems.toSorted((one, other) => rank(one) - rank(other)).map((problem) => {
    const fixes = make('span', { className: 'row' });
    const item = make('li', { className: `level-${problem.severity}` },
      make('strong', {}, levels[problem.data?.level ?? ''] ?? ''), make('p', {}, problem.message),
      button(`Line ${problem.range.start.line + 1}`, () => { hide('problems'); go(problem.range.start); }), fixes);
    void ask<CodeAction[] | null>('textDocument/codeAction', { ...here(), range: problem.range, context: { diagnostics: [problem], only: ['quickfix'] } })
      .then((actions) => fixes.append(...(actions ?? []).map((action) => button(action.title, () => {
        void (action.edit === undefined ? ask<CodeAction>('codeAction/resolve', action) : Promise.resolve(action)).then((whole) => {
          hide('problems');
          apply(whole.edit ?? {});
        });
      }))), () => undefined);
    return item;
  })));
  show('problems');
};

byId('outline-open').onclick = () => {
  void ask<Symbol[] | null>('textDocument/documentSymbol', here()).then((symbols) => {
    const list = (some: Symbol[]): HTMLElement => make('ul', {}, ...some.map((symbol) => make('li', {},
      button([symbol.name, symbol.detail].filter(Boolean).join(', '), () => { hide('outline'); go(symbol.selectionRange.start); }),
      ...(symbol.children?.length ? [list(symbol.children)] : []))));
    byId('outline-list').replaceChildren(list((symbols ?? []).toReversed()));
    show('outline');
  });
};

byId('walk-open').onclick = () => {
  void ask<{ head: string; steps: Step[] } | null>('healthNotes/check', here()).then((plan) => {
    if (plan !== null) {
      walk(plan.steps, {
        write: (line) => put(lineInto(view!.state.doc.toString(), plan.head, line)),
        takeBack: (line) => {
          const text = view!.state.doc.toString();
          const from = text.lastIndexOf(`\n  ${line}`);
          if (from >= 0) {
            view!.dispatch({ changes: { from, to: from + line.length + 3 }, userEvent: 'undo' });
          }
        },
      });
    }
  });
};

// --- the page ---
const wide = matchMedia('(min-width: 900px)');
let pageTimer = 0;
let pageView: 'clinic' | 'share' | 'sheet' = 'clinic';
const pageOf = async (kind: string): Promise<string> =>
  (await ask<{ html: string } | null>('healthNotes/page', { uri: uriOf(current!.name), ...(kind === 'clinic' ? {} : { view: kind }) }))?.html ?? '';
const pageShown = (): boolean => wide.matches || document.body.classList.contains('page');

function pageSoon(): void {
  clearTimeout(pageTimer);
  pageTimer = setTimeout(() => { void paintPage(); }, 120) as unknown as number;
}

async function paintPage(): Promise<void> {
  if (current === null || !pageShown()) {
    return;
  }
  try {
    const html = await pageOf(pageView);
    const frame = byId<HTMLIFrameElement>('frame');
    const top = frame.contentWindow?.scrollY ?? 0;
    frame.onload = () => frame.contentWindow?.scrollTo(0, top);
    frame.srcdoc = html;
  } catch {
    // a newer page is on its way
  }
}

function showPage(kind: typeof pageView): void {
  pageView = kind;
  document.body.classList.add('page');
  byId('page-open').textContent = 'Note';
  void paintPage();
}
byId('page-open').onclick = () => {
  if (document.body.classList.toggle('page')) {
    showPage('clinic');
  } else {
    byId('page-open').textContent = 'Page';
  }
};
wide.addEventListener('change', pageSoon);
byId('page-print').onclick = () => byId<HTMLIFrameElement>('frame').contentWindow?.print();
byId('page-file').onclick = () => { void pageOf(pageView).then((html) => handOver(current!.name.replace(/\.hnote$/, pageView === 'clinic' ? '.html' : `-${pageView}.html`), 'text/html', html)); };
byId<HTMLSelectElement>('page-kind').onchange = (event) => showPage((event.target as HTMLSelectElement).value as typeof pageView);

// --- photos ---
byId<HTMLInputElement>('photo-file').onchange = async (event) => {
  const input = event.target as HTMLInputElement;
  const file = input.files?.[0];
  input.value = '';
  if (file === undefined || view === null) {
    return;
  }
  let bytes: Uint8Array;
  try {
    bytes = await drawnAnew(file);
  } catch {
    say('This picture can\'t be read. Try a JPEG or PNG file.');
    return;
  }
  try {
    const taken = new Set((await store.pictures()).map((one) => one.name));
    let number = 1;
    while (taken.has(`${day()}-${number}.jpg`)) {
      number++;
    }
    const name = `${day()}-${number}.jpg`;
    await store.keepPicture({ name, bytes });
    tell({ path: folder + name, bytes });
    const text = view.state.doc.toString();
    const head = text.split('\n').findLast((line) => line.startsWith(day())) ?? `${day()} log`;
    put(lineInto(text, head.trimEnd(), `photo ${name}`));
    say(`${name} is kept beside the note, without its place and camera.`);
  } catch {
    say('The picture is not kept: this browser has no room left.', true);
  }
};
byId('photo-open').onclick = () => byId('photo-file').click();

// --- files ---
async function listNotes(): Promise<void> {
  const all = (await store.notes()).sort((a, b) => b.changed - a.changed);
  byId('notes-list').replaceChildren(...all.map((one) => make('li', { className: 'row' },
    button(one.name.replace(/\.hnote$/, ''), () => { hide('notes'); void open(one.name); }, 'grow'),
    button('Export', () => { void handOver(one.name, 'text/plain', one.text); }),
    button('Delete', () => {
      if (one.name !== current?.name && confirm(`Delete ${one.name} from this device? Export it first if you may need it.`)) {
        void store.dropNote(one.name).then(listNotes);
      } else if (one.name === current?.name) {
        say('This note is open. Open another one before you delete it.');
      }
    }))));
  const lasting = await navigator.storage?.persisted?.() ?? false;
  byId('clears').hidden = lasting;
}

async function keep(name: string, text: string, handle?: FileSystemFileHandle): Promise<void> {
  const free = await store.freeName(name);
  await store.keepNote({ name: free, text, changed: Date.now(), ...(handle === undefined ? {} : { handle }) });
  void navigator.storage?.persist?.();
  await open(free);
}

async function takeIn(files: Iterable<File>): Promise<void> {
  for (const file of files) {
    if (file.name.endsWith('.zip')) {
      const entries = Object.entries(unzipSync(new Uint8Array(await file.arrayBuffer()), { filter: (one) => /\.(hnote|jpg)$/.test(one.name) && one.originalSize < 16_000_000 }));
      for (const [name, bytes] of entries.filter(([one]) => one.endsWith('.jpg'))) {
        await store.keepPicture({ name, bytes });
        tell({ path: folder + name, bytes });
      }
      for (const [name, bytes] of entries.filter(([one]) => one.endsWith('.hnote'))) {
        await keep(name, strFromU8(bytes));
      }
    } else {
      await keep(file.name, await file.text());
    }
  }
}

byId('notes-open').onclick = () => { void listNotes().then(() => show('notes')); };
byId<HTMLInputElement>('import-file').onchange = (event) => {
  const input = event.target as HTMLInputElement;
  void takeIn([...input.files ?? []]).then(() => { input.value = ''; hide('notes'); }, () => say('This file can\'t be read. Nothing was changed.'));
};
byId('import').onclick = () => byId('import-file').click();
byId('open-file').hidden = !('showOpenFilePicker' in window);
byId('open-file').onclick = async () => {
  try {
    const [handle] = await (window as unknown as { showOpenFilePicker(options: object): Promise<FileSystemFileHandle[]> }).showOpenFilePicker({ types: [{ description: 'Health note', accept: { 'text/plain': ['.hnote'] } }] });
    await keep(handle!.name, await (await handle!.getFile()).text(), handle);
    hide('notes');
  } catch {
    // nothing was chosen
  }
};
byId('export-all').onclick = async () => {
  await save();
  const files: Record<string, Uint8Array> = {};
  (await store.notes()).forEach((one) => { files[one.name] = strToU8(one.text); });
  (await store.pictures()).forEach((one) => { files[one.name] = one.bytes; });
  await handOver(`health-notes-${day()}.zip`, 'application/zip', zipSync(files) as BlobPart);
};

byId<HTMLFormElement>('new').onsubmit = (event) => {
  event.preventDefault();
  const data = new FormData(event.target as HTMLFormElement);
  const lines = ([['pet', 'pet'], ['species', 'species'], ['born', 'born']] as const).map(([field, word]) => [word, String(data.get(field) ?? '').trim()]).filter(([, value]) => value !== '').map((pair) => pair.join(' '));
  hide('notes');
  void keep(String(data.get('pet') ?? 'note') || 'note', `${lines.join('\n')}\n`);
};

byId('format').onclick = () => { hide('more'); if (view !== null) { formatDocument(view); } };
byId('rename').onclick = () => { hide('more'); if (view !== null) { view.focus(); renameSymbol(view); } };
byId('more-open').onclick = () => show('more');

// --- start ---
if ('serviceWorker' in navigator && !new URL(location.href).searchParams.has('plain')) {
  navigator.serviceWorker.register('sw.js').then(() => navigator.serviceWorker.ready, () => undefined).then(() => { document.body.dataset['offline'] = 'ready'; });
}
void (async () => {
  (await store.pictures()).forEach((one) => tell({ path: folder + one.name, bytes: one.bytes }));
  const all = await store.notes();
  const last = all.find((one) => one.name === localStorage.getItem('last')) ?? all[0];
  if (last === undefined) {
    byId('start').hidden = false;
  } else {
    await open(last.name);
  }
})();
byId('start-new').onclick = () => { void listNotes().then(() => show('notes')); };
void client.initializing.then(() => { document.body.dataset['server'] = 'ready'; });
