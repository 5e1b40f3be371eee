using LabelForge.Checks.Reading;
using LabelForge.Recipes;

namespace LabelForge.Tests.Recipes;

/// <summary>An address is read as it stands on an envelope. All places are invented.</summary>
public class EnvelopeAddressTests
{
    [Theory]
    [InlineData("14 Sample Mill Road\nLower Wendle ME 00000", "14 Sample Mill Road", "Lower Wendle", "ME", "00000", "US")]
    [InlineData("14 Sample Mill Road\nLower Wendle, ME 00000-1234", "14 Sample Mill Road", "Lower Wendle", "ME", "00000-1234", "US")]
    [InlineData("14 Sample Mill Road, Lower Wendle, ME 00000", "14 Sample Mill Road", "Lower Wendle", "ME", "00000", "US")]
    [InlineData("14 Sample Mill Road, Lower Wendle, ME 00000, USA", "14 Sample Mill Road", "Lower Wendle", "ME", "00000", "US")]
    [InlineData("Unit 3\n14 Sample Mill Road\nLower Wendle, New Hampshire 00000\nUnited States", "Unit 3, 14 Sample Mill Road",
        "Lower Wendle", "NH", "00000", "US")]
    [InlineData("3 Sample Row\nExampleton NS B0X 0X0", "3 Sample Row", "Exampleton", "NS", "B0X 0X0", "CA")]
    [InlineData("3, rue de l’Exemple\nVille-Exemple QC H0H 0H0\nCanada", "3, rue de l’Exemple", "Ville-Exemple", "QC", "H0H 0H0", "CA")]
    [InlineData("2 Sample Lane\nExampleford\nZZ1 1ZZ", "2 Sample Lane", "Exampleford", null, "ZZ1 1ZZ", "GB")]
    [InlineData("2 Sample Lane, Exampleford ZZ1 1ZZ, England", "2 Sample Lane", "Exampleford", null, "ZZ1 1ZZ", "GB")]
    [InlineData("Musterweg 4\n00000 Musterstadt\nDeutschland", "Musterweg 4", "Musterstadt", null, "00000", "DE")]
    [InlineData("Voorbeeldstraat 5\n0000 AA Voorbeeld\nNetherlands", "Voorbeeldstraat 5", "Voorbeeld", null, "0000 AA", "NL")]
    public void An_address_is_read_into_its_parts(string envelope, string street, string town, string? region, string postcode,
        string country)
    {
        var place = EnvelopeAddress.Read(envelope)!;
        Assert.Equal((street, town, region, postcode, country), (place.Street, place.City, place.Region, place.Postcode, place.Country));
    }

    [Fact]
    public void What_was_understood_is_said_in_full() =>
        Assert.Equal("14 Sample Mill Road · Lower Wendle · Maine · 00000 · United States",
            EnvelopeAddress.Understood(EnvelopeAddress.Read("14 Sample Mill Road\nLower Wendle ME 00000")!));

    [Theory]
    [InlineData("")]
    [InlineData("  \n ")]
    public void Nothing_written_is_no_address(string text) => Assert.Null(EnvelopeAddress.Read(text));

    [Fact]
    public void Half_an_address_is_taken_as_far_as_it_goes()
    {
        Assert.Equal("14 Sample Mill Road", EnvelopeAddress.Read("14 Sample Mill Road")!.Street);
        Assert.Null(EnvelopeAddress.Read("14 Sample Mill Road")!.City);
        Assert.Equal("Lower Wendle", EnvelopeAddress.Read("14 Sample Mill Road\nLower Wendle")!.City);
    }

    [Theory]
    [InlineData("555-0127", ContactKind.Phone, "555-0127")]
    [InlineData("+1 (207) 555-0127", ContactKind.Phone, "+1 (207) 555-0127")]
    [InlineData("https://thistlepond.example/", ContactKind.Web, "thistlepond.example")]
    [InlineData("thistlepond.example/shop", ContactKind.Web, "thistlepond.example/shop")]
    [InlineData("bench@thistlepond.example", ContactKind.Email, "bench@thistlepond.example")]
    public void A_way_to_reach_a_business_is_told_by_how_it_is_written(string typed, ContactKind kind, string text)
    {
        var read = ContactWay.Parse(typed);
        Assert.Equal((kind, text), (read.Value!.Kind, read.Value.Text));
    }

    [Theory]
    [InlineData("bench@thistlepond", "ends too soon")]
    [InlineData("bench@", "ends too soon")]
    [InlineData("@thistlepond.example", "no e-mail address")]
    [InlineData("be nch@thistlepond.example", "no e-mail address")]
    [InlineData("Bench <bench@thistlepond.example>", "no e-mail address")]
    [InlineData("ask anyone", "no telephone number")]
    [InlineData("12", "no telephone number")]
    public void What_reaches_nobody_is_refused_with_what_to_write(string typed, string wrong)
    {
        var read = ContactWay.Parse(typed);
        Assert.False(read.IsValue);
        Assert.Contains(wrong, read.Wrong, StringComparison.Ordinal);
        Assert.Contains(".example", read.Write, StringComparison.Ordinal);
    }

    [Fact]
    public void Countries_have_one_code_one_name_and_a_currency_each()
    {
        Assert.Equal(Country.All.Length, Country.All.Select(c => c.Code).Distinct().Count());
        Assert.Equal(Country.All.Length, Country.All.Select(c => c.Name).Distinct().Count());
        Assert.All(Country.All, c => Assert.Matches("^[A-Z]{2}\\|[A-Z]{3}$", $"{c.Code}|{c.Currency}"));
        Assert.Equal(("CA", "CAD"), (Country.Find("canada")!.Code, Country.Find("ca")!.Currency));
        Assert.Null(Country.Find("Atlantis"));
    }

    // By ISO 3166-1 RU is Russia; RA is nobody's there, but is read as the Argentine Republic. Neither is the United Kingdom.
    [Theory]
    [InlineData("RU", null)]
    [InlineData("RA", null)]
    [InlineData("UK", "GB")]
    [InlineData("Österreich", "AT")]
    [InlineData("Éire", "IE")]
    [InlineData("South Korea", "KR")]
    [InlineData("Jordan", null)]
    public void A_word_on_a_label_is_a_country_only_where_labels_mean_one(string word, string? code) =>
        Assert.Equal(code, Country.OnLabel(word)?.Code);

    [Theory]
    [InlineData("RU", "RU")]
    [InlineData("Jordan", "JO")]
    [InlineData("U.S.A.", "US")]
    [InlineData("Polska", "PL")]
    public void A_country_that_is_typed_may_be_any(string typed, string code) => Assert.Equal(code, Country.Find(typed)!.Code);

    [Fact]
    public void Every_state_has_letters_and_a_name()
    {
        Assert.Equal(Region.StateCodes.Split('|').Length, Region.StateNames.Split('|').Length);
        Assert.Equal(("Maine", "Virgin Islands", "Yukon", "ZZ"),
            (Region.Name("ME"), Region.Name("VI"), Region.Name("YT"), Region.Name("ZZ")));
        Assert.Equal(56, Region.States.Count);
    }

    public static TheoryData<string, string, string> Envelopes => new()
    {
        { "US", "00000", "{s}\n{t}, ME {c}" }, { "US", "00000-1234", "{s}\n{t} ME {c}" }, { "CA", "H0H 0H0", "{s}\n{t} QC {c}" },
        { "GB", "ZZ1 1ZZ", "{s}\n{t}\n{c}" }, { "IE", "D6W XY00", "{s}\n{t}\n{c}" }, { "MT", "ABC 1234", "{s}\n{t}\n{c}" },
        { "DE", "01234", "{s}\n{c} {t}" }, { "FR", "00000", "{s}\n{c} {t}" }, { "AT", "1234", "{s}\n{c} {t}" },
        { "NL", "1234 AA", "{s}\n{c} {t}" }, { "PL", "00-000", "{s}\n{c} {t}" }, { "SE", "123 45", "{s}\n{c} {t}" },
        { "CZ", "123 45", "{s}\n{c} {t}" }, { "PT", "1234-567", "{s}\n{c} {t}" }, { "RO", "012345", "{s}\n{c} {t}" },
    };

    // One truth: what is typed, what the label prints of it, and what is read there are the same address.
    [Theory]
    [MemberData(nameof(Envelopes))]
    public void An_address_that_is_typed_is_found_again_on_its_label(string country, string code, string form)
    {
        var name = Country.Find(country)!.Name;
        foreach (var street in new[] { "14 Sample Mill Road", "3 rue de l’Exemple", "Musterweg 4", "9 Example Quay" })
        {
            foreach (var town in new[] { "Wendle", "Lower Wendle", "Ville-Exemple" })
            {
                var typed =
                    EnvelopeAddress.Read(
                        $"{form.Replace("{s}", street, StringComparison.Ordinal).Replace("{t}", town, StringComparison.Ordinal).Replace("{c}", code, StringComparison.Ordinal)}\n{name}")!;
                Assert.Equal((street, town, code, country), (typed.Street, typed.City, typed.Postcode, typed.Country));
                Assert.Equal(typed, EnvelopeAddress.Read($"{typed.Line}, {name}"));
                var read =
                    Assert.Single(
                        AddressReader.Read(
                            $"Thistle Pond Soap\nNet Wt 4 oz (113 g)\nThistle Pond Soapworks, {typed.Line}, {name}\nLot 26R25-01E"));
                Assert.Equal((country, true), (read.Country, read.HasStreet));
                Assert.All(new[] { street, town, code }, part => Assert.Contains(part, read.Line, StringComparison.Ordinal));
            }
        }
    }

    // What a maker types as the way to be reached stands on the label, and is found there again.
    [Theory]
    [InlineData("555-0127")]
    [InlineData("+1 (207) 555-0127")]
    [InlineData("+49 30 5550127")]
    [InlineData("0161 496 0123")]
    [InlineData("+353 1 555 0127")]
    [InlineData("thistlepond.example")]
    [InlineData("thistlepond.de")]
    [InlineData("savon-du-gue.fr/contact")]
    [InlineData("thistlepond.co.uk")]
    [InlineData("bench@thistlepond.example")]
    public void A_way_to_reach_a_business_is_found_again_on_its_label(string typed)
    {
        var way = ContactWay.Parse(typed).Value!;
        var read = ContactReader.Read($"Thistle Pond Soap\nNet Wt 4 oz (113 g)\n{way.Text}\nLot 26R25-01E");
        Assert.Equal([way.Text], way.Kind switch { ContactKind.Phone => read.Phones, ContactKind.Email => read.Emails, _ => read.Webs });
        Assert.Single(read.Spans);
    }

    [Theory]
    [InlineData("0 12345 67890 5")]
    [InlineData("Best before 01-02-2027")]
    [InlineData("01 02 2027")]
    [InlineData("Lot 0042 17")]
    [InlineData("Exampleton, MA 01234-5678")]
    [InlineData("saponified oils e.g. olive etc. and so on")]
    public void Other_figures_and_stops_are_no_way_to_reach_anybody(string words) => Assert.False(ContactReader.Read(words).Any);
}
