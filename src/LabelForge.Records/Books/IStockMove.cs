namespace LabelForge.Records.Books;

/// <summary>An entry that changes what is left of a batch or of a bottle.</summary>
internal interface IStockMove
{
    /// <summary>The batch that it hangs on, by any of its numbers; null for none.</summary>
    int? MovesOf { get; }

    /// <summary>The receipt that it takes from or adds to, by any of its numbers; null for none.</summary>
    int? MovesFrom => null;

    /// <summary>By how much it changes what is left of the bottle; below zero where it takes.</summary>
    decimal Amount => 0;

    /// <summary>Whether it takes material for a batch and leaves the batch's pieces as they are.</summary>
    bool OnlyTakes => true;

    /// <summary>Changes the figures of its batch, all but what is left.</summary>
    /// <param name="lot">The batch.</param>
    /// <param name="sign">1 where the entry comes to stand, -1 where it is struck.</param>
    void Move(BatchStock lot, int sign)
    {
    }
}
