// Builds what the launcher runs: `dist/storystick.cjs`, and `dist/calculator.cjs`, which holds mathjs and is loaded
// only when a plan contains an expression; then the compiled code of both. Before that it writes the list of rules
// from the folder's files, so that adding a rule is adding one file.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const require = createRequire(import.meta.url);
const root = fileURLToPath(new URL('.', import.meta.url));
const rulesFolder = new URL('./src/rules/', import.meta.url);

/** Whoever reads the file meanwhile gets the old one or the new one, never half of one. */
function writeWhole(path, content) {
  const draft = `${path}.${process.pid}`;
  writeFileSync(draft, content);
  renameSync(draft, path);
}

/** What lies in no folder, or shows how a rule came to its number, is no rule. */
function ruleFiles() {
  return readdirSync(rulesFolder, { recursive: true })
    .map((file) => String(file).replaceAll('\\', '/'))
    .filter((file) => file.includes('/') && !file.startsWith('working/') && file.endsWith('.ts'))
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

/** The calculator stays a bundle of its own, asked for when it is needed. */
const calculatorApart = {
  name: 'calculator apart',
  setup: ({ onResolve }) =>
    onResolve({ filter: /\/calculator\.ts$/ }, ({ kind }) =>
      kind === 'dynamic-import' ? { path: './calculator.cjs', external: true } : undefined,
    ),
};

/** What packages load at the start for the sake of things that we do not use, with what they get instead. */
const shims = {
  // The table is given nothing but stand-ins of ASCII, see src/report/table.ts.
  'string-width': 'module.exports = (text) => text.length;',
  '@colors/colors/safe': 'module.exports = {};',
  // Chalk is told whether to colour, see src/cli/terminal.ts.
  '#supports-color': 'export default { stdout: false, stderr: false };',
  // Commander could start subcommands that are programs of their own.
  'node:child_process': 'module.exports = {};',
};

const lighter = {
  name: 'lighter packages',
  setup({ onResolve, onLoad }) {
    const names = Object.keys(shims).join('|');
    onResolve({ filter: new RegExp(`^(${names})$`) }, ({ path, importer }) =>
      importer.includes('node_modules') ? { path, namespace: 'shim' } : undefined,
    );
    onLoad({ filter: /.*/, namespace: 'shim' }, ({ path }) => ({ contents: shims[path] }));
    // In its build for Node, yaml looks into the environment at every single token, for a debugging aid of its own.
    onResolve({ filter: /^yaml$/ }, () => ({
      path: require.resolve('yaml/package.json').replace('package.json', 'browser/dist/index.js'),
    }));
    onLoad({ filter: /[\\/]yaml[\\/]browser[\\/]dist[\\/]parse[\\/](lexer|parser)\.js$/ }, ({ path }) => ({
      contents: withoutGenerators(readFileSync(path, 'utf8')),
    }));
    onLoad({ filter: /[\\/]cli-table3[\\/]src[\\/]cell\.js$/ }, ({ path }) => ({
      contents: withSharedChars(readFileSync(path, 'utf8')),
    }));
  },
};

/**
 * yaml hands every token up through a tower of generators, of which each step costs time. This makes plain methods
 * of them: what they would yield goes to `put`, in the same order. It halves the time to parse a plan.
 */
function withoutGenerators(source) {
  const plain = source
    .replace(/^( +)\*(?=\w+\()/gm, '$1')
    .replace(/\byield\* (?=this\.)/g, '')
    .replace(/\byield (?=[^\n]*[;{]$)/gm, 'this.put = ')
    .replace('class Lexer {', 'class Lexer { set put(token) { this.onToken(token); }')
    .replace('class Parser {', 'class Parser { tokens = []; set put(token) { this.tokens.push(token); }')
    .replace(
      /for \(const lexeme of (this\.lexer)(\.lex\(.*\))\)\s+this\.next\(lexeme\);([^}]*this\.end\(\);)/,
      '$1.onToken = (lexeme) => this.next(lexeme); $1$2; $3 return this.tokens;',
    );
  const expected = plain.includes('class Lexer') ? 'this.onToken(token)' : 'return this.tokens;';
  if (!plain.includes(expected) || /\byield\b/.test(plain.replace(/\/\*[\s\S]*?\*\//g, ''))) {
    throw new Error('yaml has changed: look at withoutGenerators() in esbuild.config.mjs');
  }
  return plain;
}

/**
 * cli-table3 works out anew for each cell which characters its frame is drawn with. Ours have none of their own, so this
 * does it once a table: a report has a thousand cells, and they took a third of the time to lay it out.
 */
function withSharedChars(source) {
  const shared = source
    .replace(
      /let chars = \(this\.chars = \{\}\);\s+CHAR_NAMES\.forEach\(function \(name\) \{\s+(setOption\(optionsChars, tableChars, name, chars\);)\s+\}\);/,
      'this.chars = sharedChars.get(tableChars); if (!this.chars) { const chars = (this.chars = {}); sharedChars.set(tableChars, chars); for (const name of CHAR_NAMES) $1 }',
    )
    .replace('class Cell {', 'const sharedChars = new WeakMap();\nclass Cell {');
  if (!shared.includes('sharedChars.set(tableChars, chars)')) {
    throw new Error('cli-table3 has changed: look at withSharedChars() in esbuild.config.mjs');
  }
  return shared;
}

async function bundle() {
  const { build } = await import('esbuild');
  const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));
  const { outputFiles } = await build({
    absWorkingDir: root,
    entryPoints: { storystick: 'src/cli/main.ts', calculator: 'src/plan/calculator.ts' },
    outdir: 'dist',
    outExtension: { '.js': '.cjs' },
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    // Turns import() into require(), which the launcher answers.
    supported: { 'dynamic-import': false },
    minify: true,
    legalComments: 'linked',
    define: { STORYSTICK_VERSION: JSON.stringify(version) },
    plugins: [calculatorApart, lighter],
    logLevel: 'warning',
    write: false,
  });
  mkdirSync(`${root}dist`, { recursive: true });
  for (const { path, text } of outputFiles) {
    // esbuild writes ASCII but for regular expressions, where an escape means the same.
    const ascii = text.replace(
      /[^\0-\x7f]/g,
      (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
    );
    writeWhole(path, path.endsWith('.cjs') ? ascii : text);
  }
}

/** Checks an example and a file that is no plan, so that what they call is compiled, and writes down V8's code. */
async function writeCaches() {
  const { run, scripts, bundleOf, cacheOf, sealOf } = require('./bin/storystick.cjs');
  process.stdout.write = process.stderr.write = (_, done) => done?.() ?? true;
  for (const plan of ['examples/curlew/curlew.yaml', 'package.json']) {
    process.argv = [...process.argv.slice(0, 2), 'check', plan];
    await new Promise((done) => {
      process.exit = done;
      run('storystick');
    });
  }
  for (const [name, script] of scripts) {
    const code = script.createCachedData();
    const seal = sealOf(readFileSync(bundleOf(name)), code);
    if (seal) writeWhole(cacheOf(name), Buffer.concat([Buffer.from(seal), code]));
  }
  process.exitCode = 0;
}

if (process.argv.includes('--caches')) await writeCaches();
else {
  writeRegistry();
  if (!process.argv.includes('--registry-only')) {
    await bundle();
    // In a process of its own: V8's code fits only a process that was started like the launcher's.
    execFileSync(process.execPath, [fileURLToPath(import.meta.url), '--caches'], {
      cwd: root,
      stdio: 'inherit',
    });
  }
}
