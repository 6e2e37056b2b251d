import type { Offer, OfferedCommand, OfferedOption, offersOf } from './offers.ts';

/**
 * For bash from 3.2 on, without the package of helpers that many systems have. Bash breaks `--format=sarif` into three
 * words, and knows nothing of commas.
 */
export function bashScript(name: string, { options, commands }: ReturnType<typeof offersOf>): string {
  const own = `_${name}`;
  return `# Completion of ${name} for bash, printed by \`${name} completion bash\`.

${own}_words() {
  local each
  while IFS= read -r each; do COMPREPLY+=("$each"); done < <(compgen -W "$1" -- "$current")
}

${own}_list() {
  local each head=
  [[ $current == *,* ]] && head="\${current%,*},"
  while IFS= read -r each; do COMPREPLY+=("$head$each"); done < <(compgen -W "$1" -- "\${current##*,}")
}

${own}_plans() {
  local each
  compopt -o filenames 2>/dev/null
  while IFS= read -r each; do COMPREPLY+=("$each"); done < <(
    compgen -f -X '!*.y*ml' -- "$current"
    compgen -d -- "$current"
  )
}

${own}() {
  local current="\${COMP_WORDS[COMP_CWORD]}" before= command= word at given=0 skip=
  COMPREPLY=()
  [[ $current == = ]] && current=
  for ((at = 1; at < COMP_CWORD; at++)); do
    word="\${COMP_WORDS[at]}"
    [[ $word == = ]] && continue
    if [[ -n $skip ]]; then skip= before=
    elif [[ -z $command && $word != -* ]]; then command="$word"
    elif [[ $word == -* ]]; then
      before=
      case "$command $word" in
${valueCases(commands)}      esac
    else given=$((given + 1)); fi
  done
  if [[ -n $skip ]]; then
    case "$command $before" in
${commands.flatMap((command) => command.options.flatMap((option) => valueLines(own, command, option))).join('')}    esac
    return
  fi
  case "$command" in
    "")
      if [[ $current == -* ]]; then ${own}_words "${namesOf(options)}"
      else ${own}_words "${commands.map((command) => command.name).join(' ')}"; fi
      ;;
${commands.map((command) => commandLines(own, command)).join('')}  esac
}

complete -F ${own} ${name}
`;
}

const namesOf = (options: readonly OfferedOption[]): string =>
  options.flatMap(({ names }) => names).join(' ');

function valueCases(commands: readonly OfferedCommand[]): string {
  const patterns = commands.flatMap(({ name, options }) =>
    options.filter(({ value }) => value).flatMap(({ names }) => names.map((option) => `"${name} ${option}"`)),
  );
  return patterns.length === 0 ? '' : `        ${patterns.join(' | ')}) skip=1 before="$word" ;;\n`;
}

function valueLines(own: string, { name }: OfferedCommand, { names, value }: OfferedOption): string[] {
  const call = value && callOf(own, value);
  return call ? [`      ${names.map((option) => `"${name} ${option}"`).join(' | ')}) ${call} ;;\n`] : [];
}

function callOf(own: string, offer: Offer): string | undefined {
  switch (offer.kind) {
    case 'words':
      return `${own}_words "${offer.words.join(' ')}"`;
    case 'list':
      return `${own}_list "${offer.words.join(' ')}"`;
    case 'plan':
      return `${own}_plans`;
    case 'anything':
      return undefined;
  }
}

function commandLines(own: string, { name, options, arguments: positional }: OfferedCommand): string {
  const cases = positional.flatMap(({ offer, variadic }, at) => {
    const call = callOf(own, offer);
    return call ? [`        ${variadic ? '*' : at}) ${call} ;;`] : [];
  });
  const values = cases.length === 0 ? ['      :'] : ['      case $given in', ...cases, '      esac'];
  return `    ${name})
      if [[ $current == -* ]]; then ${own}_words "${namesOf(options)}"; return; fi
${values.join('\n')}
      ;;
`;
}
