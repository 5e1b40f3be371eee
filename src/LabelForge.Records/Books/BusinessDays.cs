namespace LabelForge.Records.Books;

/// <summary>Counting business days.</summary>
public static class BusinessDays
{
    /// <summary>The day that lies so many business days after another.</summary>
    /// <remarks>Saturdays and Sundays are left out; public holidays are not, so the day is never too late.</remarks>
    public static DateOnly After(DateOnly day, int businessDays)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(businessDays);
        for (; businessDays > 0; businessDays--)
        {
            do
                day = day.AddDays(1);
            while (day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday);
        }
        return day;
    }
}
