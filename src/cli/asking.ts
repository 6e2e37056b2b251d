import { createInterface } from 'node:readline';
import type { Ask } from './new.ts';

/** Asks at a terminal. Ctrl-C and Ctrl-D end the asking, and nothing else: who asked says what becomes of it. */
export function askingAt(
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
): { readonly ask: Ask; readonly end: () => void } {
  const terminal = createInterface({ input, output, terminal: true });
  let ended = false;
  let stop = (): void => {};
  terminal.on('SIGINT', () => terminal.close());
  terminal.on('close', () => {
    ended = true;
    stop();
  });
  const ask: Ask = (question) =>
    new Promise((answer) => {
      if (ended) return answer(undefined);
      stop = () => {
        output.write('\n');
        answer(undefined);
      };
      terminal.question(question, (text) => {
        stop = () => {};
        answer(text);
      });
    });
  return { ask, end: () => terminal.close() };
}
