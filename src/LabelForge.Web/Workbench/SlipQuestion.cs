namespace LabelForge.Web.Workbench;

/// <summary>What looks like a slip in a form that was not written yet, and how to write it all the same.</summary>
/// <param name="Form">The form's name.</param>
/// <param name="Questions">What is asked.</param>
/// <param name="Yes">Writes it as it is.</param>
public sealed record SlipQuestion(string Form, ImmutableArray<Problem> Questions, Func<Task> Yes);

/// <summary>A form is asked about before it is written.</summary>
internal sealed class SlipAskedException(ImmutableArray<Problem> questions) : Exception
{
    /// <summary>What is asked.</summary>
    public ImmutableArray<Problem> Questions { get; } = questions;
}
