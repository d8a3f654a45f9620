// What the client library leaves out: worked-out values at the ends of lines, and the server's colours. Both are asked for what is in sight.
import { RangeSetBuilder, StateEffect, StateField, type Extension } from '@codemirror/state';
import { Decoration, EditorView, ViewPlugin, WidgetType, type DecorationSet, type ViewUpdate } from '@codemirror/view';
import { LSPPlugin } from '@codemirror/lsp-client';

const pause = 30;

class Hint extends WidgetType {
  constructor(private readonly label: string, private readonly tip: string) { super(); }
  override eq(other: Hint): boolean { return other.label === this.label; }
  override toDOM(): HTMLElement {
    const span = document.createElement('span');
    span.className = 'hint';
    span.textContent = this.label;
    span.title = this.tip;
    return span;
  }
}

interface InlayHint { position: { line: number; character: number }; label: string; tooltip?: { value: string } }

function layer(): { field: StateField<DecorationSet>; set: (view: EditorView, decorations: DecorationSet) => void } {
  const effect = StateEffect.define<DecorationSet>();
  const field = StateField.define<DecorationSet>({
    create: () => Decoration.none,
    update: (value, transaction) => transaction.effects.reduce((now, one) => (one.is(effect) ? one.value : now), value.map(transaction.changes)),
    provide: (self) => EditorView.decorations.from(self),
  });
  return { field, set: (view, decorations) => view.dispatch({ effects: effect.of(decorations) }) };
}

const hints = layer();
const colours = layer();

async function refresh(view: EditorView, stillThere: () => boolean): Promise<void> {
  const plugin = LSPPlugin.get(view);
  if (plugin === null) {
    return;
  }
  const { client, uri } = plugin;
  await client.initializing;
  client.sync();
  const doc = view.state.doc;
  const current = (): boolean => stillThere() && view.state.doc === doc;
  const range = { start: plugin.toPosition(view.viewport.from), end: plugin.toPosition(view.viewport.to) };
  const question = { textDocument: { uri }, range };
  const [found, tokens] = await Promise.all([
    client.request<unknown, InlayHint[] | null>('textDocument/inlayHint', question),
    client.request<unknown, { data: number[] } | null>('textDocument/semanticTokens/range', question),
  ]);
  if (!current()) {
    return;
  }
  hints.set(view, Decoration.set((found ?? []).map((hint) => Decoration.widget({ widget: new Hint(` ${hint.label}`, hint.tooltip?.value ?? ''), side: 1 }).range(plugin.fromPosition(hint.position))), true));
  const { tokenTypes, tokenModifiers } = client.serverCapabilities?.semanticTokensProvider?.legend ?? { tokenTypes: [], tokenModifiers: [] };
  const builder = new RangeSetBuilder<Decoration>();
  const data = tokens?.data ?? [];
  for (let i = 0, line = 0, start = 0; i + 4 < data.length; i += 5) {
    line += data[i]!;
    start = data[i] === 0 ? start + data[i + 1]! : data[i + 1]!;
    const from = plugin.fromPosition({ line, character: start });
    const modifiers = tokenModifiers.filter((_, bit) => (data[i + 4]! >> bit) & 1);
    builder.add(from, from + data[i + 2]!, Decoration.mark({ class: ['tok', tokenTypes[data[i + 3]!], ...modifiers].join(' tok-') }));
  }
  colours.set(view, builder.finish());
}

export const shown: Extension = [hints.field, colours.field, ViewPlugin.fromClass(class {
  private timer = 0;
  private gone = false;
  constructor(private readonly view: EditorView) { this.later(); }
  update(update: ViewUpdate): void {
    if (update.docChanged || update.viewportChanged) {
      this.later();
    }
  }
  destroy(): void { this.gone = true; clearTimeout(this.timer); }
  private later(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => { refresh(this.view, () => !this.gone).catch(() => undefined); }, pause) as unknown as number;
  }
})];
