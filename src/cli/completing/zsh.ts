import type { Offer, OfferedArgument, OfferedCommand, OfferedOption, offersOf } from './offers.ts';

/** For zsh's own system of completion: to be read by `source`, or as a file `_storystick` of the function path. */
export function zshScript(name: string, { options, commands }: ReturnType<typeof offersOf>): string {
  const own = `_${name}`;
  return `#compdef ${name}
# Completion of ${name} for zsh, printed by \`${name} completion zsh\`.

${own}() {
  local curcontext="$curcontext" state line
  local -a commands
  typeset -A opt_args
  commands=(
${commands.map((command) => `    ${quoted(`${command.name}:${command.description.replace(/:/g, '\\:')}`)}\n`).join('')}  )
  _arguments -C \\
${options.flatMap(optionSpecs).map(line).join('')}    '1: :->command' \\
    '*:: :->rest'
  case $state in
    command) _describe -t commands command commands ;;
    rest)
      case $words[1] in
${commands.map(commandLines).join('')}      esac
      ;;
  esac
}

if [[ $funcstack[1] == ${own} ]]; then ${own} "$@"; else compdef ${own} ${name}; fi
`;
}

const line = (spec: string): string => `    ${spec} \\\n`;

const quoted = (text: string): string => `'${text.replace(/'/g, "'\\''")}'`;

/** A description within the brackets of a specification. */
const bracketed = (text: string): string => `[${text.replace(/[[\]\\:]/g, '\\$&')}]`;

function optionSpecs({ names, description, value }: OfferedOption): string[] {
  const told = bracketed(description);
  return names.map((name) => {
    // Options are few enough to be offered again; only of a pair of names, one is enough.
    const others = names.length > 1 ? `(${names.join(' ')})` : '*';
    return quoted(
      value === undefined
        ? `${others}${name}${told}`
        : `${others}${name}${name.startsWith('--') ? '=' : '+'}${told}:value:${actionOf(value)}`,
    );
  });
}

function actionOf(offer: Offer): string {
  switch (offer.kind) {
    case 'words':
      return `(${offer.words.join(' ')})`;
    case 'list':
      return `_values -s , value ${offer.words.join(' ')}`;
    case 'plan':
      return '_files -g "*.y(a|)ml"';
    case 'anything':
      return ' ';
  }
}

const argumentSpec = ({ name, offer, variadic }: OfferedArgument, at: number): string =>
  quoted(`${variadic ? '*' : at + 1}:${name}:${actionOf(offer)}`);

function commandLines({ name, options, arguments: positional }: OfferedCommand): string {
  const specs = [...options.flatMap(optionSpecs), ...positional.map(argumentSpec)];
  return `        ${name})\n          _arguments ${specs.join(' \\\n            ')}\n          ;;\n`;
}
