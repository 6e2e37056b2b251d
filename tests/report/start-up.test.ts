import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { expect, test } from 'vitest';

/** The packages that loading a file of the report brings in. */
async function packagesOf(file: string): Promise<string[]> {
  const { metafile } = await build({
    entryPoints: [fileURLToPath(new URL(`../../src/report/${file}`, import.meta.url))],
    bundle: true,
    platform: 'node',
    format: 'esm',
    write: false,
    metafile: true,
  });
  const names = Object.keys(metafile.inputs).flatMap(
    (path) => /node_modules\/([^/]+)\//.exec(path)?.[1] ?? [],
  );
  return [...new Set(names)].sort();
}

test.each(['json.ts', 'sarif.ts'])('%s loads no package at all', async (file) => {
  expect(await packagesOf(file)).toEqual([]);
});

test('only JUnit loads the library that writes XML', async () => {
  expect(await packagesOf('junit.ts')).toContain('fast-xml-builder');
  expect(await packagesOf('terminal.ts')).not.toContain('fast-xml-builder');
});

test('the terminal report does not load the schema library', async () => {
  const packages = await packagesOf('terminal.ts');
  expect(packages).toContain('chalk');
  expect(packages).not.toContain('zod');
});
