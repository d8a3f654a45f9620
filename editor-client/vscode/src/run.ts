import { execFile } from 'node:child_process';

/** Runs `hnote` and gives what it printed; a refusal is thrown with its own words. */
export const runHnote = (program: string, args: readonly string[]): Promise<string> =>
  new Promise((resolve, reject) => {
    execFile(program, [...args], { timeout: 30_000, maxBuffer: 16 * 1024 * 1024 }, (error, output, errors) => {
      if (error === null) {
        resolve(output);
      } else {
        reject(new Error(errors.trim().split('\n')[0] ?? error.message));
      }
    });
  });
