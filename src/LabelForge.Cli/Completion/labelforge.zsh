#compdef labelforge
# labelforge: words finished with Tab. In ~/.zshrc, after compinit: eval "$(labelforge completion zsh)"
_labelforge() {
  local -a words_found
  words_found=("${(@f)$("${words[1]}" complete --at "$CURSOR" -- "$BUFFER" 2>/dev/null)}")
  words_found=(${words_found:#})
  if (( ${#words_found} )); then
    compadd -a words_found
  else
    _files
  fi
}
compdef _labelforge labelforge
