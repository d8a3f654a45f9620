const PATIENCE = 180_000;

// A file in the editor whose one line is now right, now wrong.
export class Edited {
  #wrong = true;
  #version = 1;
  #touched = 0;

  constructor(client, server, file) {
    Object.assign(this, { client, server, file });
  }

  // The time to the first findings, and to those that the rules make of a whole note.
  async open() {
    const shown = this.#shows(true);
    const all = this.server.rules ? this.client.hear('textDocument/publishDiagnostics', (said) => said.diagnostics.some((one) => one.severity !== 2), PATIENCE) : null;
    const start = performance.now();
    this.client.tell('textDocument/didOpen', { textDocument: { uri: this.file.uri, languageId: this.file.language, version: 1, text: this.file.text } });
    await shown();
    const first = performance.now() - start;
    await all;
    return [first, performance.now() - start];
  }

  // One character, and the reply that shows what it did.
  async flip() {
    this.#wrong = !this.#wrong;
    const { character, right, wrong } = this.file.flip;
    const shown = this.#shows(this.#wrong);
    this.#change(character, character + 1, this.#wrong ? wrong : right);
    await shown();
  }

  // One character at the end of the same line, that has no findings.
  touch() {
    this.#change(this.file.typing, this.file.typing + 1 - (this.#touched === 0 ? 1 : 0), 'abcdefgh'[this.#touched++ % 8]);
  }

  // Typed fast: all but the last say nothing new; the last makes the line wrong.
  async burst(edits) {
    if (this.#wrong) await this.flip();
    const shown = this.#shows(true);
    const start = performance.now();
    for (let i = 0; i < edits - 1; i++) this.#change(this.file.typing + i, this.file.typing + i, 'x');
    this.#wrong = true;
    this.#change(this.file.flip.character, this.file.flip.character + 1, this.file.flip.wrong);
    await shown();
    const took = performance.now() - start;
    this.#change(this.file.typing, this.file.typing + edits - 1, '');
    await this.flip();
    return took;
  }

  #change(start, end, text) {
    const line = this.file.line;
    this.client.tell('textDocument/didChange', {
      textDocument: { uri: this.file.uri, version: ++this.#version },
      contentChanges: [{ range: { start: { line, character: start }, end: { line, character: end } }, text }],
    });
  }

  // Waits until the diagnostics of the line are there, or gone: told, or asked for again and again.
  #shows(wrong) {
    const fits = (diagnostics) => diagnostics.some((one) => one.severity <= 2 && one.range.start.line <= this.file.line && this.file.line <= one.range.end.line) === wrong;
    if (this.server.pull) {
      return async () => {
        const end = performance.now() + PATIENCE;
        while (performance.now() < end) {
          const report = await this.client.ask('textDocument/diagnostic', { textDocument: { uri: this.file.uri } });
          if (fits(report.items)) return;
        }
        throw new Error('the edit was never shown');
      };
    }
    const heard = this.client.hear('textDocument/publishDiagnostics', (said) => said.uri === this.file.uri && fits(said.diagnostics), PATIENCE);
    heard.catch(() => {});
    return () => heard;
  }
}
