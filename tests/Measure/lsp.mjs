// Drives language servers over standard input and output and prints one table; see measure-lsp.sh.
// A reply counts only when it shows the state of the edited line.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { Client } from './client.mjs';
import { Edited } from './edited.mjs';
import * as files from './files.mjs';

const top = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const { values: options } = parseArgs({
  options: {
    only: { type: 'string', default: 'native,jit,yaml,json' },
    sizes: { type: 'string', default: '1000,10000,100000' },
    edits: { type: 'string', default: '200' },
    binary: { type: 'string', default: process.env.HNOTE_BINARY ?? join(top, 'out/native/hnote') },
    dll: { type: 'string', default: join(top, 'server/Cli/bin/Release/net10.0/hnote.dll') },
    packages: { type: 'string', default: process.env.HNOTE_MEASURE_PACKAGES ?? join(tmpdir(), 'hnote-measure-servers') },
  },
});
const BUDGET = 15_000;
const sample = join(top, 'samples/marlow.hnote');
const today = '2026-11-25';

const servers = {
  native: { name: 'hnote, native', start: () => [options.binary, ['lsp', '--today', today]], file: (lines) => files.note(lines, sample), pull: false, rules: true },
  jit: { name: 'hnote, JIT', start: () => ['dotnet', [options.dll, 'lsp', '--today', today]], file: (lines) => files.note(lines, sample), pull: false, rules: true },
  yaml: { name: 'yaml-language-server 1.25.0', start: () => [process.execPath, [npm('yaml-language-server', '1.25.0', 'bin/yaml-language-server'), '--stdio']], file: files.yaml, pull: false },
  json: { name: 'JSON, extracted 4.10.0, pull', start: () => [process.execPath, [npm('vscode-langservers-extracted', '4.10.0', 'bin/vscode-json-language-server'), '--stdio']], file: files.json, pull: true },
};

const rows = [];
for (const key of options.only.split(',')) {
  const server = servers[key];
  const [command, args] = server.start();
  if (key === 'native' && !existsSync(command)) {
    console.error(`${command} is missing: dotnet publish server/Cli -c Release -r linux-x64 -o out/native, or --binary PATH`);
    process.exit(1);
  }
  const starts = [];
  for (let run = 0; run < 7; run++) starts.push(await startOnce(server, command, args));
  for (const size of options.sizes.split(',').map(Number)) {
    console.error(`${server.name}, ${size} lines ...`);
    rows.push({ server: server.name, lines: size, start: median(starts), ...(await measure(server, command, args, size)) });
  }
}
print(rows);

// From the start of the process to the answer to initialize.
async function startOnce(server, command, args) {
  const client = new Client(command, args);
  await hello(client, server);
  const took = performance.now() - client.started;
  await client.leave();
  return took;
}

async function measure(server, command, args, size) {
  const file = server.file(size);
  const client = new Client(command, args);
  const row = {};
  try {
    await hello(client, server);
    client.tell('initialized', {});
    const edited = new Edited(client, server, file);
    row.lines = file.text.split('\n').length;
    [row.open, row.all] = await edited.open();
    // the first edits warm the server up, as the first minute of a session does
    for (let i = 0; i < 10; i++) await edited.flip();
    row.edit = await repeat(() => timed(() => edited.flip()));
    row.completion = await repeat(async () => {
      edited.touch();
      return timed(() => client.ask('textDocument/completion', { textDocument: { uri: file.uri }, position: file.completion }));
    });
    row.hover = await repeat(async () => {
      edited.touch();
      return timed(() => client.ask('textDocument/hover', { textDocument: { uri: file.uri }, position: file.hover }));
    });
    const bursts = [];
    for (let i = 0; i < 5; i++) bursts.push(await edited.burst(200));
    row.burst = median(bursts);
  } catch (problem) {
    row.problem = problem.message;
    console.error(`  ${problem.message}`);
  }
  row.memory = client.peakMemory();
  await client.leave();
  return row;
}

function hello(client, server) {
  return client.ask('initialize', {
    processId: process.pid, rootUri: null, workspaceFolders: null,
    initializationOptions: { provideFormatter: true },
    capabilities: {
      general: { positionEncodings: ['utf-16'] },
      workspace: { configuration: true, workspaceFolders: false },
      textDocument: {
        publishDiagnostics: { relatedInformation: true, versionSupport: true },
        completion: { completionItem: { snippetSupport: true, documentationFormat: ['markdown'] } },
        hover: { contentFormat: ['markdown'] },
        ...(server.pull ? { diagnostic: { dynamicRegistration: false } } : {}),
      },
    },
  });
}

async function timed(work) {
  const start = performance.now();
  await work();
  return performance.now() - start;
}

// As often as asked, or as long as the budget lasts; a breath between, as between two keys.
async function repeat(work) {
  const times = [];
  const end = performance.now() + BUDGET;
  do {
    times.push(await work());
    await new Promise((resolve) => setTimeout(resolve, 2));
  } while (times.length < Number(options.edits) && performance.now() < end);
  return times;
}

function median(times) { return quantile(times, 0.5); }

function quantile(times, q) {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(q * sorted.length) - 1)] ?? NaN;
}

// A server from npm, installed once into a folder outside of the project.
function npm(name, version, file) {
  const folder = join(options.packages, `${name}-${version}`);
  const path = join(folder, 'node_modules', name, file);
  if (!existsSync(path)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), JSON.stringify({ private: true, dependencies: { [name]: version } }));
    execFileSync('npm', ['install', '--no-audit', '--no-fund', '--ignore-scripts'], { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
  }
  return path;
}

function print(all) {
  const ms = (value) => value === undefined || Number.isNaN(value) ? '–' : value < 100 ? value.toFixed(1) : value.toFixed(0);
  const head = ['server', 'lines', 'start to initialize', 'open to diagnostics', 'open to all', 'edit, median', 'edit, p95', 'completion, p95', 'hover, p95', '200 edits', 'peak memory'];
  const body = all.map((row) => [
    row.server, String(row.lines), ms(row.start), ms(row.open), ms(row.all), ms(row.edit && median(row.edit)), ms(row.edit && quantile(row.edit, 0.95)),
    ms(row.completion && quantile(row.completion, 0.95)), ms(row.hover && quantile(row.hover, 0.95)), ms(row.burst), Number.isNaN(row.memory) ? '–' : `${row.memory.toFixed(0)} MiB`,
  ]);
  const widths = head.map((cell, i) => Math.max(cell.length, ...body.map((row) => row[i].length)));
  const line = (cells) => `| ${cells.map((cell, i) => i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i])).join(' | ')} |`;
  console.log(`${cpus().length} cores, ${cpus()[0].model.trim()}, node ${process.version}; times in ms; each row is one process`);
  console.log([line(head), `|${widths.map((w, i) => i === 0 ? '-'.repeat(w + 2) : `${'-'.repeat(w + 1)}:`).join('|')}|`, ...body.map(line)].join('\n'));
  for (const row of all.filter((one) => one.problem)) console.log(`${row.server}, ${row.lines} lines: ${row.problem}`);
}
