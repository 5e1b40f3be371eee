using System.Collections.Immutable;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace LabelForge.Benchmarks;

/// <summary>Copies a method's signature from the assembly it stands in to a profile: each part as what writes it there.</summary>
internal sealed class SignatureCopy(ProfileWriter profile, MetadataReader from)
    : ISignatureTypeProvider<Action<SignatureTypeEncoder>, object?>
{
    public Action<SignatureTypeEncoder> GetPrimitiveType(PrimitiveTypeCode typeCode) => typeCode switch
    {
        PrimitiveTypeCode.Void => to => to.Builder.WriteByte((byte)SignatureTypeCode.Void),
        PrimitiveTypeCode.TypedReference => to => to.Builder.WriteByte((byte)SignatureTypeCode.TypedReference),
        _ => to => to.PrimitiveType(typeCode),
    };

    public Action<SignatureTypeEncoder> GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) =>
        Named(ProfileWriter.NameOf(reader, handle), rawTypeKind);

    public Action<SignatureTypeEncoder> GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) =>
        Named(ProfileWriter.NameOf(reader, handle), rawTypeKind);

    public Action<SignatureTypeEncoder> GetTypeFromSpecification(MetadataReader reader, object? genericContext,
        TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(new SignatureCopy(profile, from), genericContext);

    // The kind stands before the token: 0x11 a value, 0x12 an object (ECMA-335, II.23.1.16); without one a token stands alone.
    private Action<SignatureTypeEncoder> Named(string name, byte kind) => to =>
    {
        if (kind == 0)
            to.Builder.WriteCompressedInteger(CodedIndexOf(name));
        else
            to.Type(profile.Reference(name), kind == (byte)SignatureTypeKind.ValueType);
    };

    private int CodedIndexOf(string name) => System.Reflection.Metadata.Ecma335.CodedIndex.TypeDefOrRefOrSpec(profile.Reference(name));

    public Action<SignatureTypeEncoder> GetSZArrayType(Action<SignatureTypeEncoder> elementType) => to => elementType(to.SZArray());

    public Action<SignatureTypeEncoder> GetArrayType(Action<SignatureTypeEncoder> elementType, ArrayShape shape) =>
        to => to.Array(elementType, s => s.Shape(shape.Rank, shape.Sizes, shape.LowerBounds));

    public Action<SignatureTypeEncoder> GetByReferenceType(Action<SignatureTypeEncoder> elementType) => to =>
    {
        to.Builder.WriteByte((byte)SignatureTypeCode.ByReference);
        elementType(to);
    };

    public Action<SignatureTypeEncoder> GetPointerType(Action<SignatureTypeEncoder> elementType) => to => elementType(to.Pointer());

    public Action<SignatureTypeEncoder> GetPinnedType(Action<SignatureTypeEncoder> elementType) => elementType;

    public Action<SignatureTypeEncoder> GetGenericInstantiation(Action<SignatureTypeEncoder> genericType,
        ImmutableArray<Action<SignatureTypeEncoder>> typeArguments) => to =>
    {
        to.Builder.WriteByte((byte)SignatureTypeCode.GenericTypeInstance);
        genericType(to);
        to.Builder.WriteCompressedInteger(typeArguments.Length);
        foreach (var argument in typeArguments)
            argument(to);
    };

    public Action<SignatureTypeEncoder> GetGenericTypeParameter(object? genericContext, int index) => to => to.GenericTypeParameter(index);

    public Action<SignatureTypeEncoder> GetGenericMethodParameter(object? genericContext, int index) =>
        to => to.GenericMethodTypeParameter(index);

    public Action<SignatureTypeEncoder> GetModifiedType(Action<SignatureTypeEncoder> modifier, Action<SignatureTypeEncoder> unmodifiedType,
        bool isRequired) => to =>
    {
        to.Builder.WriteByte((byte)(isRequired ? SignatureTypeCode.RequiredModifier : SignatureTypeCode.OptionalModifier));
        modifier(to);
        unmodifiedType(to);
    };

    public Action<SignatureTypeEncoder> GetFunctionPointerType(MethodSignature<Action<SignatureTypeEncoder>> signature) =>
        throw new NotSupportedException();
}
