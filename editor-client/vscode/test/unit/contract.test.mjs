// What the extension reads of the command's answers, against the command itself.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { test } from 'node:test';
import * as plain from '../../dist/plain.mjs';

const local = (path) => new URL(path, import.meta.url).pathname;
const [program, ...first] = process.env.HNOTE_BINARY ? [process.env.HNOTE_BINARY] : ['dotnet', local('../../../../server/Cli/bin/Debug/net10.0/hnote.dll')];

test('what the command says is due is read whole', () => {
  const report = execFileSync(program, [...first, 'due', local('../../../../samples/hazel-puppy.hnote'), '--json', '--today', '2026-11-25'], { encoding: 'utf8' });
  const items = plain.readDue(report);
  assert.equal(items.length, JSON.parse(report).due.length);
  assert.equal(plain.whenOf(items[0]), '2026-11-20, was due 5 days ago');
});
