import type { Offer, OfferedArgument, OfferedCommand, OfferedOption, offersOf } from './offers.ts';

/** For fish: one `complete` a command, an option and an argument. */
export function fishScript(name: string, { options, commands }: ReturnType<typeof offersOf>): string {
  const own = `__${name}`;
  const takingValue = commands.flatMap((command) =>
    command.options.filter(({ value }) => value).flatMap(({ names }) => names),
  );
  const start = `complete -c ${name}`;
  return `# Completion of ${name} for fish, printed by \`${name} completion fish\`.

# Succeeds where the command line has this command and, if a number follows, so many arguments before the cursor.
function ${own}_at
  set -l words (commandline -opc)[2..]
  set -l given
  set -l skip no
  for word in $words
    if test $skip = yes
      set skip no
    else if string match -q -- '-*' $word
      contains -- $word ${[...new Set(takingValue)].join(' ')}; and set skip yes
    else
      set -a given $word
    end
  end
  if test (count $argv) -eq 0
    test (count $given) -eq 0
    return
  end
  test "$given[1]" = $argv[1]; or return 1
  test (count $argv) -eq 1; or test (math (count $given) - 1) -eq $argv[2]
end

# The words of a list with commas between, each behind what is typed of it already.
function ${own}_list
  set -l head (commandline -ct | string replace -r '^--[a-z-]+=' '' | string match -r '^.*,')
  for word in $argv
    echo "$head$word"
  end
end

function ${own}_plans
  __fish_complete_path (commandline -ct) | string match -r '^[^\\t]*(?:/|\\.ya?ml)(?:\\t.*)?$'
end

${start} -f
${options.map((option) => `${start} -n '${own}_at'${optionText(own, option)}\n`).join('')}${commands
  .map((command) => commandLines(start, own, command))
  .join('')}`;
}

const quoted = (text: string): string => `'${text.replace(/[\\']/g, '\\$&')}'`;

const commandLines = (start: string, own: string, command: OfferedCommand): string =>
  [
    `-n '${own}_at' -a ${command.name} -d ${quoted(command.description)}`,
    ...command.options.map((option) => `-n '${own}_at ${command.name}'${optionText(own, option)}`),
    ...command.arguments.flatMap((argument, at) => argumentText(own, command.name, argument, at)),
  ]
    .map((text) => `${start} ${text}\n`)
    .join('');

function optionText(own: string, { names, description, value }: OfferedOption): string {
  const flags = names.map((name) =>
    name.startsWith('--') ? ` -l ${name.slice(2)}` : ` -s ${name.slice(1)}`,
  );
  const values = value === undefined ? '' : ` -x${valuesOf(own, value)}`;
  return `${flags.join('')}${values} -d ${quoted(description)}`;
}

function argumentText(
  own: string,
  command: string,
  { offer, variadic }: OfferedArgument,
  at: number,
): string[] {
  const values = valuesOf(own, offer);
  return values === '' ? [] : [`-n '${own}_at ${command}${variadic ? '' : ` ${at}`}'${values}`];
}

function valuesOf(own: string, offer: Offer): string {
  switch (offer.kind) {
    case 'words':
      return ` -a ${quoted(offer.words.join(' '))}`;
    case 'list':
      return ` -a ${quoted(`(${own}_list ${offer.words.join(' ')})`)}`;
    case 'plan':
      return ` -a ${quoted(`(${own}_plans)`)}`;
    case 'anything':
      return '';
  }
}
