import { folded } from '../report/folded.ts';
import { run } from './program.ts';
import { outputWidth, wantsColour } from './terminal.ts';

declare const STORYSTICK_VERSION: string | undefined;

// A reader that has seen enough, such as `head`, closes the pipe; that is no error.
process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => {
  if (code === 'EPIPE') return;
  process.stderr.write(`the report could not be written (${code ?? 'unknown reason'})\n`);
  process.exit(2);
});
process.stderr.on('error', () => {});

run(process.argv.slice(2), {
  version: typeof STORYSTICK_VERSION === 'string' ? STORYSTICK_VERSION : 'development',
  width: outputWidth(process.stdout, process.env),
  colour: wantsColour(process.stdout, process.env),
  print: (text) => process.stdout.write(text),
  complain: (text) =>
    process.stderr.write(
      process.stderr.isTTY ? folded(text, outputWidth(process.stderr, process.env)) : text,
    ),
  loadCalculator: () => import('../plan/calculator.ts'),
}).then(leave, (error: unknown) => {
  const message = error instanceof Error ? error.message : String(error);
  process.stderr.write(
    `storystick has a defect and stopped: ${message}\nNothing was changed. Please report it with the plan that caused it.\n`,
  );
  leave(3);
});

/** Ends as soon as all is written. Left to itself, Node would first wait for V8 to optimise what never runs again. */
function leave(exitCode: number): void {
  process.exitCode = exitCode;
  const whenWritten = (stream: NodeJS.WriteStream, next: () => void) =>
    stream.write('', (error) => {
      if (!error) next();
    });
  whenWritten(process.stdout, () => whenWritten(process.stderr, () => process.exit(exitCode)));
}
