// First paint against the server: on every sample, nothing is painted as something that the server says it is not.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { test } from 'node:test';

const require = createRequire(import.meta.url);
const { INITIAL, Registry, parseRawGrammar } = require('vscode-textmate');
const oniguruma = require('vscode-oniguruma');
const rpc = require('vscode-jsonrpc/node');
const local = (path) => new URL(path, import.meta.url).pathname;

/** For each of our scopes, the server's types that say the same. */
const same = {
  'comment.line': ['comment'],
  'punctuation.definition.quote': ['operator'],
  'markup.quote': ['string'],
  'constant.numeric': ['number'],
  'entity.name.type': ['type'],
  'keyword.other.word': ['keyword'],
  'entity.name.tag': ['decorator'],
};
const samples = local('../../../../samples/');
const [program, ...first] = process.env.HNOTE_BINARY ? [process.env.HNOTE_BINARY] : ['dotnet', local('../../../../server/Cli/bin/Debug/net10.0/hnote.dll')];

test('no sample is painted against the server', { timeout: 120_000 }, async () => {
  await oniguruma.loadWASM(readFileSync(require.resolve('vscode-oniguruma/release/onig.wasm')).buffer);
  const registry = new Registry({
    onigLib: Promise.resolve({ createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns), createOnigString: (text) => new oniguruma.OnigString(text) }),
    loadGrammar: async () => parseRawGrammar(readFileSync(local('../../syntaxes/hnote.tmLanguage.json'), 'utf8'), 'hnote.json'),
  });
  const grammar = await registry.loadGrammar('text.hnote');
  const server = spawn(program, [...first, 'lsp', '--today', '2026-11-25'], { stdio: ['pipe', 'pipe', 'inherit'] });
  const client = rpc.createMessageConnection(server.stdout, server.stdin);
  client.listen();
  try {
    const { capabilities } = await client.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {} });
    const types = capabilities.semanticTokensProvider.legend.tokenTypes;
    await client.sendNotification('initialized', {});
    let compared = 0;
    const wrong = [];
    for (const name of readdirSync(samples).filter((file) => file.endsWith('.hnote'))) {
      const text = readFileSync(samples + name, 'utf8');
      const uri = `file:///${name}`;
      await client.sendNotification('textDocument/didOpen', { textDocument: { uri, languageId: 'hnote', version: 1, text } });
      const { data } = await client.sendRequest('textDocument/semanticTokens/full', { textDocument: { uri } });
      const said = new Map();
      for (let i = 0, line = 0, start = 0; i < data.length; i += 5) {
        start = data[i] === 0 ? start + data[i + 1] : data[i + 1];
        line += data[i];
        for (let c = start; c < start + data[i + 2]; c++) said.set(`${line}:${c}`, types[data[i + 3]]);
      }
      let stack = INITIAL;
      text.split('\n').forEach((line, number) => {
        const painted = grammar.tokenizeLine(line, stack);
        stack = painted.ruleStack;
        for (const token of painted.tokens) {
          const scope = token.scopes.at(-1);
          const allowed = Object.entries(same).find(([prefix]) => scope.startsWith(prefix))?.[1];
          for (let c = token.startIndex; allowed && c < token.endIndex; c++) {
            const type = said.get(`${number}:${c}`);
            compared += type === undefined ? 0 : 1;
            if (type !== undefined && !allowed.includes(type)) {
              wrong.push(`${name}:${number + 1}:${c + 1} ${scope}, the server says ${type}: ${line}`);
              break;
            }
          }
        }
      });
    }
    assert.ok(compared > 1_000, `only ${compared} characters were compared`);
    assert.deepEqual(wrong.slice(0, 20), []);
  } finally {
    client.dispose();
    server.kill();
  }
});
