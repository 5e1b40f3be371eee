# labelforge: words finished with Tab. In your $PROFILE: labelforge completion powershell | Out-String | Invoke-Expression
Register-ArgumentCompleter -Native -CommandName labelforge -ScriptBlock {
    param($wordToComplete, $commandAst, $cursorPosition)
    # PowerShell drops the space at the end of what was typed.
    $line = $commandAst.ToString().PadRight($cursorPosition)
    labelforge complete --at $cursorPosition -- "$line" 2>$null | ForEach-Object {
        $text = if ($_ -match '\s') { "'$_'" } else { $_ }
        [System.Management.Automation.CompletionResult]::new($text, $_, 'ParameterValue', $_)
    }
}
