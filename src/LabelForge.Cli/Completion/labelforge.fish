# labelforge: words finished with Tab. In ~/.config/fish/config.fish: labelforge completion fish | source
complete -c labelforge -a '(labelforge complete -- (commandline -cp) 2>/dev/null)'
