// Builds what the launcher runs: `dist/storystick.cjs`, and `dist/calculator.cjs`, which holds mathjs and is
// loaded only when a plan contains an expression. Before that it writes the list of rules from the folder's
// files, so that adding a rule is adding one file.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';

const rulesFolder = new URL('./src/rules/', import.meta.url);

function ruleFiles() {
  return readdirSync(rulesFolder, { recursive: true })
    .map((file) => String(file).replaceAll('\\', '/'))
    .filter((file) => file.includes('/') && file.endsWith('.ts'))
    .sort();
}

function writeRegistry() {
  const files = ruleFiles();
  const name = (file) => file.replace(/\.ts$/, '').replace(/[^a-zA-Z0-9]+(.)/g, (_, c) => c.toUpperCase());
  const text = [
    '// Written by esbuild.config.mjs from the files of this folder. Do not edit.',
    "import type { Rule } from '../engine/rule.ts';",
    ...files.map((file) => `import ${name(file)} from './${file}';`),
    '',
    `const registry: readonly Rule[] = [${files.map(name).join(', ')}];`,
    'export default registry;',
    '',
  ].join('\n');
  const target = new URL('registry.generated.ts', rulesFolder);
  let before = '';
  try {
    before = readFileSync(target, 'utf8');
  } catch {
    // first build
  }
  if (before !== text) writeFileSync(target, text);
}

writeRegistry();

if (!process.argv.includes('--registry-only')) {
  const { build } = await import('esbuild');
  const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));
  await build({
    absWorkingDir: new URL('.', import.meta.url).pathname,
    entryPoints: { storystick: 'src/cli/main.ts', calculator: 'src/plan/calculator.ts' },
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    minifySyntax: true,
    minifyWhitespace: true,
    legalComments: 'linked',
    define: { STORYSTICK_VERSION: JSON.stringify(version) },
    logLevel: 'warning',
  });
}
