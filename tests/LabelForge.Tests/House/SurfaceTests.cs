using System.Reflection;
using System.Text;

namespace LabelForge.Tests.House;

/// <summary>
/// What each library offers to those above it, approved as text: a change is seen in review and not by chance. After one that is
/// meant: <c>LABELFORGE_APPROVE=1</c> with this class writes the files anew.
/// </summary>
public sealed class SurfaceTests
{
    public static TheoryData<string> Libraries => [.. new[] { "Core", "Composition", "Law", "Products", "Labels", "Checks" }];

    [Theory]
    [MemberData(nameof(Libraries))]
    public void What_a_library_offers_is_approved(string library)
    {
        var now = Of(Assembly.Load($"LabelForge.{library}"));
        var (before, after) = (Lines(Repository.Approved($"surface/{library}.txt", now)), Lines(now));
        Assert.True(before.SequenceEqual(after),
            $"{library} offers something else than approved. New: {string.Join("; ", after.Except(before).Take(5))}. Gone: {string.Join("; ", before.Except(after).Take(5))}. If it is meant so, run this class with LABELFORGE_APPROVE=1.");
    }

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    private static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (var type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.Append(Kind(type)).Append(' ').Append(Name(type, full: true)).Append('\n');
            foreach (var member in Members(type).Order(StringComparer.Ordinal))
                text.Append("    ").Append(member).Append('\n');
        }
        return text.ToString();
    }

    private static string Kind(Type type) => type switch
    {
        { IsEnum: true } => "enum",
        { IsInterface: true } => "interface",
        { IsValueType: true } => "struct",
        { IsAbstract: true, IsSealed: true } => "static class",
        { IsAbstract: true } => "abstract class",
        _ => "class",
    };

    private static IEnumerable<string> Members(Type type)
    {
        const BindingFlags All = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        if (type.IsEnum)
            return Enum.GetNames(type);
        // What the compiler writes for every record says nothing.
        var written = type.GetMethods(All)
            .Where(m => !m.IsSpecialName && m.Name is not ("<Clone>$" or "Deconstruct" or "Equals" or "GetHashCode" or "ToString"));
        return type.GetConstructors(All).Where(c => c.GetParameters() is not [{ } only] || only.ParameterType != type)
            .Select(c => $"new({Parameters(c)})")
            .Concat(type.GetProperties(All)
                .Select(
                    p =>
                        $"{Static(p.GetMethod ?? p.SetMethod)}{Name(p.PropertyType)} {p.Name}{(p.GetIndexParameters() is { Length: > 0 } at ? $"[{string.Join(", ", at.Select(i => Name(i.ParameterType)))}]" : "")}"))
            .Concat(type.GetFields(All)
                .Select(f => $"{(f.IsLiteral ? "const " : f.IsStatic ? "static " : "")}{Name(f.FieldType)} {f.Name}"))
            .Concat(
                written.Select(
                    m =>
                        $"{Static(m)}{Name(m.ReturnType)} {m.Name}{(m.IsGenericMethod ? $"<{string.Join(", ", m.GetGenericArguments().Select(a => a.Name))}>" : "")}({Parameters(m)})"));
    }

    private static string Static(MethodBase? method) => method?.IsStatic == true ? "static " : "";

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.HasDefaultValue ? "?" : "")}"));

    private static string Name(Type type, bool full = false)
    {
        if (Nullable.GetUnderlyingType(type) is { } value)
            return Name(value) + "?";
        if (type.IsArray)
            return Name(type.GetElementType()!) + "[]";
        var name = full
            ? type.FullName!
            : type.IsNested && !type.IsGenericParameter
            ? $"{Name(type.DeclaringType!)}.{type.Name}"
            : type.Name;
        if (!type.IsGenericType)
            return name;
        return $"{name.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(a => Name(a)))}>";
    }
}
