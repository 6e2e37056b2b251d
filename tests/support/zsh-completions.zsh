# Presses Tab behind a line in a real, interactive zsh, and prints what it was offered: one match a line.
# zsh -f zsh-completions.zsh SCRIPT FOLDER LINE
zmodload zsh/zpty || exit 3
script=$1 folder=$2 line=$3 found=$2/.offered setup=$2/.setup
cat > $setup <<SETUP
cd ${(q)folder}
fpath=($fpath)
autoload -Uz compinit && compinit -D -u
source ${(q)script}
# Writes down what is offered, then offers it.
compadd() {
  if [[ \${@[1,(i)(-|--)]} != *-(O|A|D)\ * ]]; then
    local -a offered
    builtin compadd -A offered "\$@"
    (( \$#offered )) && print -rl -- \$offered >> ${(q)found}
  fi
  builtin compadd "\$@"
}
zstyle ':completion:*' list-suffixes no
note-end() { print -r -- '(end)' >> ${(q)found} }
zle -N note-end
bindkey '^E' note-end
PROMPT= RPROMPT=
: > ${(q)found}.ready
SETUP
rm -f $found $found.ready
zpty -b inner zsh -f -i
zpty -w inner "source ${(q)setup}"
for ((i = 0; i < 200; i++)); do [[ -e $found.ready ]] && break; sleep 0.05; zpty -r inner ignored '*' ; done
zpty -w -n inner "$line"$'\t\x05'
for ((i = 0; i < 200; i++)); do
  grep -qx '(end)' $found 2>/dev/null && break
  sleep 0.05
  zpty -r inner ignored '*'
done
zpty -d inner
grep -vx '(end)' $found
rm -f $found $found.ready $setup
