import { run } from './program.ts';
import { outputWidth, wantsColour } from './terminal.ts';

declare const STORYSTICK_VERSION: string | undefined;

// A reader that has seen enough, such as `head`, closes the pipe; that is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

run(process.argv.slice(2), {
  version: typeof STORYSTICK_VERSION === 'string' ? STORYSTICK_VERSION : 'development',
  width: outputWidth(process.stdout, process.env),
  colour: wantsColour(process.stdout, process.env),
  print: (text) => process.stdout.write(text),
  complain: (text) => process.stderr.write(text),
  loadCalculator: () => import('../plan/calculator.ts'),
}).then(
  (exitCode) => {
    process.exitCode = exitCode;
  },
  (error: unknown) => {
    const message = error instanceof Error ? error.message : String(error);
    process.stderr.write(
      `storystick has a defect and stopped: ${message}\nNothing was changed. Please report it with the plan that caused it.\n`,
    );
    process.exitCode = 3;
  },
);
