using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Tautline.Store.People;
using Tautline.Store.Rows;

namespace Tautline.Store;

/// <summary>
/// The store, for one company at a time: every question is filtered by <see cref="CompanyId"/> and nothing of another company is written. Without a company it sees
/// nothing of any. Only <see cref="Doors"/> goes past that.
/// </summary>
public abstract class StoreContext(DbContextOptions options) : IdentityUserContext<Person, Guid>(options), IDataProtectionKeyContext
{
    public Guid? CompanyId { get; set; }

    public DbSet<Company> Companies => Set<Company>();

    public DbSet<Member> Members => Set<Member>();

    public DbSet<Device> Devices => Set<Device>();

    public DbSet<Invitation> Invitations => Set<Invitation>();

    public DbSet<ApiToken> Tokens => Set<ApiToken>();

    public DbSet<AuditRow> Audit => Set<AuditRow>();

    public DbSet<StoredJob> Jobs => Set<StoredJob>();

    public DbSet<JobItem> Items => Set<JobItem>();

    public DbSet<Attachment> Attachments => Set<Attachment>();

    public DbSet<ShareLink> Links => Set<ShareLink>();

    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>Takes the write lock of the whole database where that is the only lock it has, so that a transaction never fails halfway for want of it.</summary>
    public abstract Task<Microsoft.EntityFrameworkCore.Storage.IDbContextTransaction> BeginWriteAsync(CancellationToken cancel = default);

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.Entity<Person>().Property(p => p.Name).HasMaxLength(200);
        builder.Entity<Company>().HasQueryFilter(c => c.Id == CompanyId).Property(c => c.Name).HasMaxLength(200);
        Of<Member>(builder).HasKey(m => new { m.CompanyId, m.PersonId });
        builder.Entity<Member>().HasIndex(m => m.PersonId);
        builder.Entity<Member>().HasOne<Person>().WithMany().HasForeignKey(m => m.PersonId).OnDelete(DeleteBehavior.Restrict);
        Of<Device>(builder).HasIndex(d => new { d.CompanyId, d.PersonId });
        Of<Invitation>(builder).HasIndex(i => i.TokenHash).IsUnique();
        Of<ApiToken>(builder).HasIndex(t => t.TokenHash).IsUnique();
        Of<AuditRow>(builder).HasIndex(a => new { a.CompanyId, a.At });
        Of<StoredJob>(builder).HasKey(j => new { j.CompanyId, j.JobId });
        builder.Entity<StoredJob>().Property(j => j.JobId).HasMaxLength(StoredJob.LongestId);
        builder.Entity<StoredJob>().HasIndex(j => new { j.CompanyId, j.Changed });
        OfJob<JobItem>(builder).HasKey(i => new { i.CompanyId, i.JobId, i.Number });
        builder.Entity<JobItem>().HasIndex(i => new { i.CompanyId, i.JobId, i.Kind, i.Hash }).IsUnique();
        OfJob<Attachment>(builder).HasKey(a => new { a.CompanyId, a.JobId, a.Hash });
        OfJob<ShareLink>(builder).HasIndex(l => l.TokenHash).IsUnique();
    }

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        Guard();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        Guard();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    private EntityTypeBuilder<T> Of<T>(ModelBuilder builder) where T : class, IOfCompany
    {
        var made = builder.Entity<T>().HasQueryFilter(row => row.CompanyId == CompanyId);
        made.HasOne<Company>().WithMany().HasForeignKey(row => row.CompanyId).OnDelete(DeleteBehavior.Restrict);
        return made;
    }

    private EntityTypeBuilder<T> OfJob<T>(ModelBuilder builder) where T : class, IOfCompany
    {
        var made = Of<T>(builder);
        made.HasOne<StoredJob>().WithMany().HasForeignKey("CompanyId", "JobId").OnDelete(DeleteBehavior.Restrict);
        return made;
    }

    /// <exception cref="InvalidOperationException">A row of another company would be written.</exception>
    private void Guard()
    {
        foreach (var entry in ChangeTracker.Entries<IOfCompany>().Where(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted))
        {
            if (entry.State == EntityState.Added && entry.Entity.CompanyId == Guid.Empty && CompanyId is { } mine) entry.Property(nameof(IOfCompany.CompanyId)).CurrentValue = mine;
            if (entry.Entity.CompanyId != CompanyId) throw new InvalidOperationException($"a row of {entry.Metadata.DisplayName()} is of another company than the one at work");
        }
    }
}
