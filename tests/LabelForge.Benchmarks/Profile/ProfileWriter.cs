using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace LabelForge.Benchmarks;

/// <summary>
/// Writes methods as the profile that the ahead-of-time compiler reads (<c>--mibc</c>): an assembly whose method AssemblyDictionary
/// names groups of methods by the assemblies they need; a group loads the token of each. The format is that of the runtime's own
/// tool for profiles (dotnet/runtime, src/coreclr/tools/dotnet-pgo); from memory.
/// </summary>
internal sealed class ProfileWriter
{
    // The type that stands for every reference type in shared code comes from an assembly that only the compiler knows.
    private const string Canon = "System.__Canon";

    private readonly MetadataBuilder _metadata = new();
    private readonly MethodBodyStreamEncoder _bodies = new(new BlobBuilder());
    private readonly Dictionary<string, (MetadataReader Reader, TypeDefinitionHandle Type)> _types = new(StringComparer.Ordinal);
    private readonly Dictionary<string, EntityHandle> _references = new(StringComparer.Ordinal);
    private readonly List<PEReader> _open = [];

    /// <summary>A profile over the assemblies of a folder.</summary>
    public ProfileWriter(string folder)
    {
        foreach (var file in Directory.EnumerateFiles(folder, "*.dll").Order(StringComparer.Ordinal))
        {
            var pe = new PEReader(File.OpenRead(file));
            _open.Add(pe);
            if (!pe.HasMetadata)
                continue;
            var reader = pe.GetMetadataReader();
            foreach (var type in reader.TypeDefinitions)
                _types.TryAdd(NameOf(reader, type), (reader, type));
        }
    }

    /// <summary>Writes it; methods that are generic themselves, or no longer there, are left out.</summary>
    /// <returns>How many methods it holds.</returns>
    public int Write(IEnumerable<CompiledMethod> methods, string path)
    {
        var groups = new SortedDictionary<string, List<EntityHandle>>(StringComparer.Ordinal);
        foreach (var method in methods.Where(m => !m.Signature.Contains("generic ", StringComparison.Ordinal)))
        {
            var type = TracedType.Parse(method.Type);
            if (!type.Names.All(n => n == Canon || _types.ContainsKey(n)))
                continue;
            var (reader, definition) = _types[type.Name];
            var assemblies = type.Names.Where(n => n != Canon).Select(n => AssemblyOf(_types[n].Reader)).Distinct()
                .Order(StringComparer.Ordinal);
            foreach (var handle in reader.GetTypeDefinition(definition).GetMethods())
            {
                var found = reader.GetMethodDefinition(handle);
                if (reader.GetString(found.Name) != method.Name || found.GetGenericParameters().Count > 0)
                    continue;
                var signature = new BlobBuilder();
                var decoded = found.DecodeSignature(new SignatureCopy(this, reader), null);
                new BlobEncoder(signature).MethodSignature(decoded.Header.CallingConvention, 0, decoded.Header.IsInstance)
                    .Parameters(decoded.ParameterTypes.Length, r => decoded.ReturnType(r.Type()),
                        p => { foreach (var one in decoded.ParameterTypes) one(p.AddParameter().Type()); });
                var group = string.Concat(assemblies.Select(a => a + ";"));
                (groups.TryGetValue(group, out var list) ? list : groups[group] = []).Add(
                    _metadata.AddMemberReference(Specification(type), _metadata.GetOrAddString(method.Name),
                        _metadata.GetOrAddBlob(signature)));
            }
        }
        Assemble(groups, path);
        foreach (var pe in _open)
            pe.Dispose();
        return groups.Values.Sum(g => g.Count);
    }

    private void Assemble(SortedDictionary<string, List<EntityHandle>> groups, string path)
    {
        _metadata.AddModule(0, _metadata.GetOrAddString("startup.mibc"),
            _metadata.GetOrAddGuid(new Guid(0x1abe1f06, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1)), default, default);
        _metadata.AddAssembly(_metadata.GetOrAddString("startup"), new Version(1, 0, 0, 0), default, default, 0,
            AssemblyHashAlgorithm.None);
        _metadata.AddTypeDefinition(0, default, _metadata.GetOrAddString("<Module>"), default, MetadataTokens.FieldDefinitionHandle(1),
            MetadataTokens.MethodDefinitionHandle(1));
        var dictionary = new InstructionEncoder(new BlobBuilder());
        foreach (var (name, methods) in groups)
        {
            var body = new InstructionEncoder(new BlobBuilder());
            foreach (var method in methods)
                Load(body, method);
            dictionary.LoadString(_metadata.GetOrAddUserString(name));
            Load(dictionary, Method("Assemblies_" + name, body));
        }
        Method("AssemblyDictionary", dictionary);
        var image = new BlobBuilder();
        new ManagedPEBuilder(PEHeaderBuilder.CreateLibraryHeader(), new MetadataRootBuilder(_metadata), _bodies.Builder,
            deterministicIdProvider: _ => BlobContentId.FromHash(new byte[20])).Serialize(image);
        using var file = File.Create(path);
        image.WriteContentTo(file);
    }

    private static void Load(InstructionEncoder body, EntityHandle method)
    {
        body.OpCode(ILOpCode.Ldtoken);
        body.Token(method);
        body.OpCode(ILOpCode.Pop);
    }

    private MethodDefinitionHandle Method(string name, InstructionEncoder body)
    {
        body.OpCode(ILOpCode.Ret);
        var signature = new BlobBuilder();
        new BlobEncoder(signature).MethodSignature().Parameters(0, r => r.Void(), _ => { });
        return _metadata.AddMethodDefinition(MethodAttributes.Public | MethodAttributes.Static, MethodImplAttributes.IL,
            _metadata.GetOrAddString(name), _metadata.GetOrAddBlob(signature), _bodies.AddMethodBody(body),
            MetadataTokens.ParameterHandle(1));
    }

    private EntityHandle Specification(TracedType type)
    {
        if (type.Arguments.IsEmpty && type.Ranks == 0)
            return Reference(type.Name);
        var blob = new BlobBuilder();
        Encode(new BlobEncoder(blob).TypeSpecificationSignature(), type);
        return _metadata.AddTypeSpecification(_metadata.GetOrAddBlob(blob));
    }

    private void Encode(SignatureTypeEncoder to, TracedType type)
    {
        for (var i = 0; i < type.Ranks; i++)
            to = to.SZArray();
        if (Primitive(type.Name) is { } code)
            to.PrimitiveType(code);
        else if (type.Arguments.IsEmpty)
            to.Type(Reference(type.Name), IsValue(type.Name));
        else
        {
            var arguments = to.GenericInstantiation(Reference(type.Name), type.Arguments.Length, IsValue(type.Name));
            foreach (var one in type.Arguments)
                Encode(arguments.AddArgument(), one);
        }
    }

    // ECMA-335, II.23.1.16: in signatures these have codes of their own.
    private static PrimitiveTypeCode? Primitive(string name) =>
        name.StartsWith("System.", StringComparison.Ordinal)
            && Enum.TryParse<PrimitiveTypeCode>(name[7..], out var code)
            && code is not PrimitiveTypeCode.Void ? code : null;

    private bool IsValue(string name)
    {
        if (name == Canon)
            return false;
        var (reader, type) = _types[name];
        return reader.GetTypeDefinition(type).BaseType is { IsNil: false } parent
            && BaseName(reader, parent) is "System.ValueType" or "System.Enum" && name != "System.Enum";
    }

    private static string BaseName(MetadataReader reader, EntityHandle type) => type.Kind switch
    {
        HandleKind.TypeReference => NameOf(reader, (TypeReferenceHandle)type),
        HandleKind.TypeDefinition => NameOf(reader, (TypeDefinitionHandle)type),
        _ => "",
    };

    internal EntityHandle Reference(string name)
    {
        if (_references.TryGetValue(name, out var known))
            return known;
        var at = name.LastIndexOf('+');
        var (scope, full) = at < 0
            ? (Assembly(name == Canon ? "System.Private.Canon" : AssemblyOf(_types[name].Reader)), name)
            : (Reference(name[..at]), name[(at + 1)..]);
        var dot = at < 0 ? full.LastIndexOf('.') : -1;
        return _references[name] = _metadata.AddTypeReference(scope, dot < 0 ? default : _metadata.GetOrAddString(full[..dot]),
            _metadata.GetOrAddString(full[(dot + 1)..]));
    }

    private EntityHandle Assembly(string name) => _references.TryGetValue("assembly " + name, out var known) ? known
        : _references["assembly " + name] = _metadata.AddAssemblyReference(_metadata.GetOrAddString(name), new Version(0, 0, 0, 0),
            default, default, 0, default);

    private static string AssemblyOf(MetadataReader reader) => reader.GetString(reader.GetAssemblyDefinition().Name);

    internal static string NameOf(MetadataReader reader, TypeDefinitionHandle handle)
    {
        var type = reader.GetTypeDefinition(handle);
        var own = reader.GetString(type.Name);
        return type.GetDeclaringType() is { IsNil: false } outer
            ? $"{NameOf(reader, outer)}+{own}"
            : type.Namespace.IsNil
            ? own
            : $"{reader.GetString(type.Namespace)}.{own}";
    }

    internal static string NameOf(MetadataReader reader, TypeReferenceHandle handle)
    {
        var type = reader.GetTypeReference(handle);
        var own = reader.GetString(type.Name);
        return type.ResolutionScope.Kind == HandleKind.TypeReference ? $"{NameOf(reader, (TypeReferenceHandle)type.ResolutionScope)}+{own}"
            : type.Namespace.IsNil ? own : $"{reader.GetString(type.Namespace)}.{own}";
    }
}
