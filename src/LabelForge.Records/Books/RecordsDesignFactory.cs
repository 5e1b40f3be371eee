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

/// <summary>For the migration tool only: a context without a server.</summary>
public sealed class ServerRecordsDesignFactory : IDesignTimeDbContextFactory<ServerRecordsContext>
{
    /// <inheritdoc/>
    public ServerRecordsContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<ServerRecordsContext>().UseNpgsql("Host=127.0.0.1;Database=design").Options);
}
