# labelforge: words finished with Tab. In ~/.bashrc: eval "$(labelforge completion bash)"
_labelforge() {
  local word
  COMPREPLY=()
  while IFS= read -r word; do
    # A name with a space in it is typed with a backslash, unless a quote is open.
    case ${COMP_WORDS[COMP_CWORD]} in
      \"*|\'*) COMPREPLY+=("$word") ;;
      *) COMPREPLY+=("$(printf %q "$word")") ;;
    esac
  done < <("$1" complete --at "$COMP_POINT" -- "$COMP_LINE" 2>/dev/null)
}
complete -o bashdefault -o default -F _labelforge labelforge
