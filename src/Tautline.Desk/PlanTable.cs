using System.Text;
using Tautline.Engine.Plans;
using Tautline.Engine.Quantities;
using Tautline.Formats.Csv;

namespace Tautline.Desk;

/// <summary>The tables a plan is saved as for spreadsheets. Touch only after <see cref="Late.FormatsAsync"/>.</summary>
internal static class PlanTable
{
    /// <summary>A table by its name, one of <see cref="Doings.Tables"/>, with the mark by which a spreadsheet knows the text is UTF-8.</summary>
    public static byte[] Write(Plan plan, string table, UnitSystem units) =>
        Encoding.UTF8.GetBytes("\uFEFF" + PlanCsv.Write(plan, Enum.Parse<CsvTable>(table, ignoreCase: true), QuantitiesBy.Run, units));
}
