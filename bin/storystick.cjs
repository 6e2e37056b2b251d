#!/usr/bin/env node
// Starts the bundle that `npm run build` left in dist/. CommonJS, since the loader of ES modules takes 5 ms to wake.
//
// Most of a short run of Node goes into compiling what it runs, so the build also leaves the compiled code beside
// each bundle. V8 trusts such a file blindly: one flipped bit, and it crashes. So it is taken only if its seal fits
// this very Node, the bundle and the code itself; else all is compiled as usual. Nothing is written here, ever.
'use strict';
const { readFileSync } = require('node:fs');
const { join } = require('node:path');
const { setFlagsFromString } = require('node:v8');
const { Script } = require('node:vm');
const { crc32 } = require('node:zlib');

// What a plan is made of lives as long as the run: a growing nursery for new objects would copy it about and hold
// 50 MB more.
setFlagsFromString('--semi-space-growth-factor=1');
// Node 20 optimises code so early that a run of a tenth of a second spends more on it than it gains. Later versions
// weigh that better by themselves, and do not know the setting.
if (process.version.startsWith('v20.')) setFlagsFromString('--interrupt-budget=500000');

const root = join(__dirname, '..');
const bundleOf = (name) => join(root, 'dist', `${name}.cjs`);
const cacheOf = (name) => join(root, 'dist', `${name}.cache`);
const sealLength = 96;

/** What has to fit. Node before 20.15 has no checksum at hand, and so no cache. */
const sealOf = (bundle, code) =>
  crc32 &&
  `${process.version} ${process.platform} ${process.arch} ${crc32(bundle)} ${crc32(code)}`.padEnd(sealLength);

function compiledCode(name, bundle) {
  try {
    const cache = readFileSync(cacheOf(name));
    const code = cache.subarray(sealLength);
    return cache.latin1Slice(0, sealLength) === sealOf(bundle, code) ? code : undefined;
  } catch {
    return undefined;
  }
}

const scripts = new Map();

function scriptOf(name) {
  const bundle = readFileSync(bundleOf(name));
  // The build writes ASCII only: nothing to decode, and V8 keeps it in half the memory.
  const text = `(function (exports, require, module) {${bundle.latin1Slice()}\n})`;
  return new Script(text, { filename: bundleOf(name), cachedData: compiledCode(name, bundle) });
}

/** Runs a bundle as a CommonJS module. */
function run(name) {
  const script = scripts.get(name) ?? scriptOf(name);
  scripts.set(name, script);
  const module = { exports: {} };
  script.runInThisContext()(module.exports, requireBeside, module);
  return module.exports;
}

/** A bundle asks for another by its file beside it; all else that it asks for is Node's own. */
const requireBeside = (id) => (id.startsWith('./') ? run(id.slice(2, -'.cjs'.length)) : require(id));

if (require.main === module) {
  try {
    run('storystick');
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
    process.stderr.write(
      `storystick is not built: ${error.path} is missing.\nRun \`npm run build\` in ${root}\n`,
    );
    process.exitCode = 3;
  }
}

// For the build, which writes the caches.
module.exports = { run, scripts, bundleOf, cacheOf, sealOf };
