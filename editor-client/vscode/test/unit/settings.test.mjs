// The settings of the extension against those that the server reads.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';

const here = (path) => readFileSync(new URL(path, import.meta.url), 'utf8');

test('every setting that the server reads is offered under its name, and no other', () => {
  const source = here('../../../../server/LanguageServer/Convert/ClientSettings.cs');
  const top = [...source.matchAll(/(?:Text|Switch)\(settings, "(\w+)"\)/g)].map((match) => `hnote.${match[1]}`);
  const hints = [...source.matchAll(/Switch\(hints, "(\w+)"\)/g)].map((match) => `hnote.hints.${match[1]}`);
  const offered = Object.keys(JSON.parse(here('../../package.json')).contributes.configuration.properties).filter((name) => name.startsWith('hnote.'));
  assert.ok(hints.length > 0);
  assert.deepEqual(offered.sort(), [...top, ...hints].sort());
});
