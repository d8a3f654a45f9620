// A real client: the protocol's reference libraries over stdio. Every answer is looked at with their type guards.
// node client.js FOLDER COMMAND [ARGUMENT ...]: FOLDER holds node_modules and the note visit.hnote.
// Prints "ok NAME (COUNT)", "fault NAME: WHY" or "not announced NAME", one a line; ends with 0 when nothing is wrong.
'use strict';
const path = require('path');
const fs = require('fs');
const { spawn } = require('child_process');
const { pathToFileURL } = require('url');
const { createRequire } = require('module');

const [folder, command, ...rest] = process.argv.slice(2);
const load = createRequire(path.join(folder, 'package.json'));
const rpc = load('vscode-jsonrpc/node');
const protocol = load('vscode-languageserver-protocol');
const types = load('vscode-languageserver-types');
const Is = {
  string: (value) => typeof value === 'string',
  number: (value) => typeof value === 'number',
  integer: (value) => types.integer.is(value),
  uinteger: (value) => types.uinteger.is(value),
  typedArray: (value, guard) => Array.isArray(value) && value.every(guard),
};

const note = path.join(folder, 'visit.hnote');
const uri = pathToFileURL(note).href;
const text = fs.readFileSync(note, 'utf8');
const lines = text.split('\n');
const textDocument = { uri };
const whole = { start: { line: 0, character: 0 }, end: { line: lines.length - 1, character: 0 } };
const formatting = { tabSize: 2, insertSpaces: true };
const notAnnounced = [];
let faults = 0;

// The specification's shapes for which the library has no guard of its own.
const optional = (value, guard) => value === undefined || guard(value);
const shapes = {
  prepareRename: (value) => types.Range.is(value.range) && Is.string(value.placeholder),
  highlight: (value) => types.Range.is(value.range) && optional(value.kind, (kind) => kind >= 1 && kind <= 3),
  symbolInformation: (value) => Is.string(value.name) && Is.number(value.kind) && value.kind >= 1 && value.kind <= 26
    && types.Location.is(value.location) && optional(value.containerName, Is.string),
  report: (value) => (value.kind === 'full' && Is.typedArray(value.items, types.Diagnostic.is) && optional(value.resultId, Is.string))
    || (value.kind === 'unchanged' && Is.string(value.resultId)),
  workspaceReport: (value) => shapes.report(value) && Is.string(value.uri) && (value.version === null || Is.integer(value.version)),
  delta: (value) => types.SemanticTokens.is(value)
    || (Is.typedArray(value.edits, (edit) => Is.uinteger(edit.start) && Is.uinteger(edit.deleteCount)
      && optional(edit.data, (data) => Is.typedArray(data, Is.uinteger)))),
  completionItem: (value) => Is.string(value.label) && optional(value.kind, (kind) => kind >= 1 && kind <= 25)
    && optional(value.documentation, (it) => Is.string(it) || types.MarkupContent.is(it)) && optional(value.insertTextFormat, (it) => it === 1 || it === 2)
    && optional(value.textEdit, (edit) => types.TextEdit.is(edit) || types.InsertReplaceEdit.is(edit))
    && optional(value.additionalTextEdits, (edits) => Is.typedArray(edits, types.TextEdit.is)) && optional(value.command, types.Command.is)
    && [value.detail, value.filterText, value.sortText, value.insertText].every((it) => optional(it, Is.string)),
  // the library's guard wants an edit or a command; one that is resolved later has neither yet
  codeAction: (value) => types.CodeAction.is(value.data === undefined ? value : { edit: { changes: {} }, ...value }),
};

function say(name, values, guard) {
  const list = Array.isArray(values) ? values : [values];
  const wrong = list.find((value) => value === null || value === undefined || !guard(value));
  if (list.length === 0 || wrong !== undefined || list.includes(null) || list.includes(undefined)) {
    fault(name, list.length === 0 ? 'nothing came' : JSON.stringify(wrong ?? null).slice(0, 300));
    return false;
  }

  console.log(`ok ${name} (${list.length})`);
  return true;
}

function fault(name, why) {
  faults += 1;
  console.log(`fault ${name}: ${why}`);
}

// The place of the first line that holds `line`, `within` of the way into its first `word`.
function at(line, word, within = 1) {
  const index = lines.findIndex((one) => one.includes(line));
  if (index < 0) { throw new Error(`the note has no line "${line}"`); }
  return { line: index, character: lines[index].indexOf(word) + within };
}

function applied(before, edits) {
  const starts = [0];
  for (let i = 0; i < before.length; i += 1) { if (before[i] === '\n') { starts.push(i + 1); } }
  const offset = (place) => Math.min(before.length, (starts[place.line] ?? before.length) + place.character);
  return [...edits].sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce((now, edit) => now.slice(0, offset(edit.range.start)) + edit.newText + now.slice(offset(edit.range.end)), before);
}

function start(pull) {
  const server = spawn(command, rest, { stdio: ['pipe', 'pipe', 'inherit'] });
  const connection = protocol.createProtocolConnection(new rpc.StreamMessageReader(server.stdout), new rpc.StreamMessageWriter(server.stdin));
  const heard = { published: [], applied: [], shown: [], registered: [], progress: [] };
  const waiting = [];
  const hear = (what, value) => {
    heard[what].push(value);
    waiting.splice(0).forEach((again) => again());
  };
  connection.onError(([error]) => fault('connection', error.message));
  connection.onNotification('textDocument/publishDiagnostics', (it) => hear('published', it));
  connection.onNotification('$/progress', (it) => hear('progress', it));
  connection.onRequest('workspace/applyEdit', (it) => { hear('applied', it); return { applied: true }; });
  connection.onRequest('window/showDocument', (it) => { hear('shown', it); return { success: true }; });
  connection.onRequest('client/registerCapability', (it) => { hear('registered', it); return null; });
  connection.onRequest('workspace/configuration', (it) => it.items.map(() => ({ units: 'asNoted' })));
  connection.onRequest('window/workDoneProgress/create', () => null);
  for (const what of ['diagnostic', 'semanticTokens', 'inlayHint', 'codeLens']) { connection.onRequest(`workspace/${what}/refresh`, () => null); }
  connection.listen();
  const until = async (what, fits) => {
    for (;;) {
      const found = heard[what].find(fits);
      if (found) { return found; }
      await new Promise((again) => waiting.push(again));
    }
  };
  const ended = new Promise((done) => server.on('exit', done));
  const initialize = () => connection.sendRequest('initialize', {
    processId: process.pid,
    rootUri: null,
    workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'notes' }],
    capabilities: capabilities(pull),
  });
  const close = async () => {
    await connection.sendRequest('shutdown');
    await connection.sendNotification('exit');
    return ended;
  };
  return { connection, heard, until, initialize, close };
}

function capabilities(pull) {
  return {
    general: { positionEncodings: ['utf-16'] },
    window: { showDocument: { support: true }, workDoneProgress: true },
    workspace: {
      applyEdit: true, workspaceEdit: { documentChanges: true }, configuration: true, workspaceFolders: true,
      didChangeWatchedFiles: { dynamicRegistration: true }, didChangeConfiguration: { dynamicRegistration: true },
    },
    textDocument: {
      publishDiagnostics: { relatedInformation: true, tagSupport: { valueSet: [1, 2] }, versionSupport: true },
      ...(pull ? { diagnostic: { relatedDocumentSupport: false } } : {}),
      completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown', 'plaintext'] } },
      hover: { contentFormat: ['markdown', 'plaintext'] },
      documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      documentLink: { tooltipSupport: true },
      codeAction: {
        codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor.rewrite', 'source.fixAll'] } },
        dataSupport: true, resolveSupport: { properties: ['edit'] },
      },
      semanticTokens: { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] },
    },
  };
}

async function pushed() {
  const { connection, until, initialize, close } = start(false);
  await initialize();
  await connection.sendNotification('initialized', {});
  await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'hnote', version: 7, text } });
  const published = await until('published', (it) => it.uri === uri && it.diagnostics.length > 0);
  say('pushed diagnostics', published.diagnostics, types.Diagnostic.is);
  if (published.version !== 7) { fault('pushed diagnostics', `version ${published.version}`); }
  await connection.sendNotification('textDocument/didClose', { textDocument });
  await until('published', (it) => it.uri === uri && it.diagnostics.length === 0);
  console.log('ok diagnostics cleared on close (1)');
  const code = await close();
  if (code !== 0) { fault('exit', `code ${code}`); } else { console.log('ok exit (1)'); }
}

async function asked() {
  const { connection, heard, until, initialize, close } = start(true);
  const ask = (method, parameters = {}) => connection.sendRequest(method, { textDocument, ...parameters });
  const result = await initialize();
  const can = result.capabilities;
  say('initialize', result, (it) => can.positionEncoding === 'utf-16' && can.textDocumentSync.change === 2 && Is.string(it.serverInfo.name));
  await connection.sendNotification('initialized', {});
  await connection.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'hnote', version: 1, text } });

  let findings = [];
  const features = [
    ['pull diagnostics', can.diagnosticProvider, async (name) => {
      const report = await ask('textDocument/diagnostic');
      findings = report.items ?? [];
      say(name, report, (it) => shapes.report(it) && it.items.length > 0);
      say('pull diagnostics again', await ask('textDocument/diagnostic', { previousResultId: report.resultId }), (it) => shapes.report(it) && it.kind === 'unchanged');
    }],
    ['workspace pull diagnostics', can.diagnosticProvider?.workspaceDiagnostics, async (name) =>
      say(name, (await connection.sendRequest('workspace/diagnostic', { previousResultIds: [] })).items, shapes.workspaceReport)],
    ['inlay hints', can.inlayHintProvider, async (name) => say(name, await ask('textDocument/inlayHint', { range: whole }), types.InlayHint.is)],
    ['completion', can.completionProvider, async (name) => {
      const answer = await ask('textDocument/completion', { position: at('gait stif ', 'stif', 0), context: { triggerKind: 1 } });
      const items = Array.isArray(answer) ? answer : answer.items;
      if (!say(name, items, shapes.completionItem) || !can.completionProvider.resolveProvider) { return; }
      say('completion resolve', await connection.sendRequest('completionItem/resolve', items[0]), shapes.completionItem);
    }],
    ['hover', can.hoverProvider, async (name) => say(name, await ask('textDocument/hover', { position: at('rr 14/30s asleep', 'rr') }), types.Hover.is)],
    ['code actions', can.codeActionProvider, async (name) => {
      const wrong = findings.filter((it) => it.range.start.line === at('gait stif ', 'gait').line);
      const answer = await ask('textDocument/codeAction', { range: wrong[0]?.range ?? whole, context: { diagnostics: wrong, triggerKind: 1 } });
      if (!say(name, answer, shapes.codeAction)) { return; }
      const open = answer.find((it) => !it.edit && it.data !== undefined) ?? answer.find((it) => it.edit);
      say('code action resolve', await connection.sendRequest('codeAction/resolve', open), (it) => types.CodeAction.is(it) && types.WorkspaceEdit.is(it.edit));
    }],
    ['definition', can.definitionProvider, async (name) => say(name, await ask('textDocument/definition', { position: tag() }), types.Location.is)],
    ['references', can.referencesProvider, async (name) =>
      say(name, await ask('textDocument/references', { position: tag(), context: { includeDeclaration: true } }), types.Location.is)],
    ['highlight', can.documentHighlightProvider, async (name) => say(name, await ask('textDocument/documentHighlight', { position: tag() }), shapes.highlight)],
    ['prepare rename', can.renameProvider?.prepareProvider, async (name) => say(name, await ask('textDocument/prepareRename', { position: tag() }), shapes.prepareRename)],
    ['rename', can.renameProvider, async (name) => say(name, await ask('textDocument/rename', { position: tag(), newName: 'L-thigh' }), types.WorkspaceEdit.is)],
    ['document symbols', can.documentSymbolProvider, async (name) => say(name, await ask('textDocument/documentSymbol'), types.DocumentSymbol.is)],
    ['folding', can.foldingRangeProvider, async (name) => say(name, await ask('textDocument/foldingRange'), types.FoldingRange.is)],
    ['selection ranges', can.selectionRangeProvider, async (name) =>
      say(name, await ask('textDocument/selectionRange', { positions: [at('rr 14/30s asleep', '14/30s'), { line: 0, character: 0 }] }), types.SelectionRange.is)],
    ['workspace symbols', can.workspaceSymbolProvider, async (name) => say(name, await connection.sendRequest('workspace/symbol', { query: '' }), shapes.symbolInformation)],
    ['formatting', can.documentFormattingProvider, async (name) => {
      const edits = await ask('textDocument/formatting', { options: formatting });
      if (say(name, edits, types.TextEdit.is) && applied(text, edits) === text) { fault(name, 'the edits change nothing'); }
    }],
    ['range formatting', can.documentRangeFormattingProvider, async (name) =>
      say(name, await ask('textDocument/rangeFormatting', { range: whole, options: formatting }), types.TextEdit.is)],
    ['on type formatting', can.documentOnTypeFormattingProvider, async (name) => {
      const line = at('check by owner', 'check').line + 1;
      const change = { range: { start: { line, character: 0 }, end: { line, character: 0 } }, text: '\n' };
      await connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges: [change] });
      say(name, await ask('textDocument/onTypeFormatting', { position: { line, character: 0 }, ch: can.documentOnTypeFormattingProvider.firstTriggerCharacter, options: formatting }), types.TextEdit.is);
      const back = { range: { start: { line, character: 0 }, end: { line: line + 1, character: 0 } }, text: '' };
      await connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: 3 }, contentChanges: [back] });
    }],
    ['semantic tokens full', can.semanticTokensProvider?.full, async (name) => {
      const tokens = await ask('textDocument/semanticTokens/full');
      const { tokenTypes, tokenModifiers } = can.semanticTokensProvider.legend;
      say(name, tokens, (it) => types.SemanticTokens.is(it) && it.data.length > 0 && it.data.length % 5 === 0 && Is.typedArray(it.data, Is.uinteger)
        && it.data.every((value, index) => index % 5 !== 3 || value < tokenTypes.length)
        && it.data.every((value, index) => index % 5 !== 4 || value < 2 ** tokenModifiers.length));
      if (!can.semanticTokensProvider.full.delta) { notAnnounced.push('semantic tokens delta'); return; }
      const change = { range: { start: at('gait stif ', 'stif', 0), end: at('gait stif ', 'stif', 4) }, text: 'stiff' };
      await connection.sendNotification('textDocument/didChange', { textDocument: { uri, version: 4 }, contentChanges: [change] });
      const delta = await ask('textDocument/semanticTokens/full/delta', { previousResultId: tokens.resultId });
      if (!say('semantic tokens delta', delta, shapes.delta) || !delta.edits) { return; }
      const fresh = (await ask('textDocument/semanticTokens/full')).data;
      const patched = [...tokens.data];
      for (const edit of [...delta.edits].sort((a, b) => b.start - a.start)) { patched.splice(edit.start, edit.deleteCount, ...(edit.data ?? [])); }
      say('semantic tokens delta equals full', JSON.stringify(patched), (it) => it === JSON.stringify(fresh));
    }],
    ['semantic tokens range', can.semanticTokensProvider?.range, async (name) =>
      say(name, await ask('textDocument/semanticTokens/range', { range: { start: at('check by owner', 'check'), end: { line: lines.length - 2, character: 0 } } }), (it) => types.SemanticTokens.is(it) && it.data.length > 0)],
    ['document links', can.documentLinkProvider, async (name) => say(name, await ask('textDocument/documentLink'), types.DocumentLink.is)],
    ['code lenses', can.codeLensProvider, async (name) => say(name, await ask('textDocument/codeLens'), (it) => types.CodeLens.is(it) && types.Command.is(it.command))],
    ['commands', can.executeCommandProvider, async (name) => {
      const run = (it, ...more) => connection.sendRequest('workspace/executeCommand', { command: it, arguments: more });
      say(name, can.executeCommandProvider.commands, Is.string);
      say('command showUnits', await run('hnote.showUnits', 'us'), (it) => it === 'us');
      await run('hnote.addCheckToday', uri);
      say('command addCheckToday', (await until('applied', () => true)).edit, types.WorkspaceEdit.is);
      await run('hnote.goTo', uri, 1, 0);
      say('command goTo', heard.shown.at(-1), (it) => Is.string(it.uri) && types.Range.is(it.selection));
      const page = await run('hnote.openPage', uri);
      say('command openPage', page, (it) => Is.string(it) && fs.readFileSync(new URL(it), 'utf8').includes('<h1'));
    }],
    ['registrations', heard.registered.length > 0 || can.workspace, async (name) => {
      const all = (await until('registered', () => true)).registrations;
      say(name, all, (it) => Is.string(it.id) && Is.string(it.method));
    }],
  ];
  for (const [name, announced, check] of features) {
    if (!announced) { notAnnounced.push(name); continue; }
    try { await check(name); } catch (error) { fault(name, error.message); }
  }

  await close();
}

function tag() { return at('  lump L-flank', 'L-flank'); }

(async () => {
  await pushed();
  await asked();
  notAnnounced.forEach((name) => console.log(`not announced ${name}`));
  process.exit(faults === 0 ? 0 : 1);
})().catch((error) => { console.log(`fault client: ${error.message}`); process.exit(1); });
