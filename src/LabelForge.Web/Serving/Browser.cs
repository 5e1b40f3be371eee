using System.ComponentModel;
using System.Diagnostics;

namespace LabelForge.Web.Serving;

/// <summary>The browser of the person at this machine.</summary>
public static class Browser
{
    /// <summary>Opens an address in it. Where that cannot be done nothing happens: the address was printed too.</summary>
    public static bool TryOpen(Uri address)
    {
        try
        {
            var (program, arguments) = OperatingSystem.IsMacOS() ? ("open", new[] { address.ToString() })
                : OperatingSystem.IsWindows() ? ("cmd", ["/c", "start", "", address.ToString()])
                : ("xdg-open", [address.ToString()]);
            using var started = Process.Start(new ProcessStartInfo(program, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            });
            return started is not null;
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            return false;
        }
    }
}
