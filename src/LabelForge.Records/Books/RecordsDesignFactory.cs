using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace LabelForge.Records.Books;

/// <summary>For the migration tool only: a context without a workshop.</summary>
public sealed class RecordsDesignFactory : IDesignTimeDbContextFactory<RecordsContext>
{
    /// <inheritdoc/>
    public RecordsContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<RecordsContext>().UseSqlite("Data Source=design.db").Options);
}
