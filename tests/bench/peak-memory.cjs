// Loaded before the tool, with --require: says at the end how much memory the process has held at its peak, in KiB.
const { writeSync } = require('node:fs');
process.on('exit', () => writeSync(2, `peak ${process.resourceUsage().maxRSS}\n`));
