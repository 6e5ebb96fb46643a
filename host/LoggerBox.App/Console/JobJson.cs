using System.Text.Json;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;

namespace LoggerBox.App.Console;

/// <summary>A work order for other programs; what is not written down is null or empty.</summary>
internal static class JobJson
{
    public static void Write(Utf8JsonWriter writer, Job job)
    {
        JobDetails details = job.Details;
        writer.WriteStartObject();
        writer.WriteString("id", job.Id);
        writer.WriteString("truck", details.Truck);
        writer.WriteString("serial", details.Serial);
        ListingJson.Number(writer, "hours", details.HourMeter);
        writer.WriteString("fuel", details.Fuel);
        writer.WriteString("complaint", details.Complaint);
        writer.WriteString("cause", job.Cause);
        writer.WriteString("correction", job.Correction);
        writer.WriteString("technician", details.Technician);
        writer.WriteString("sheet", details.SheetName);
        ListingJson.Number(writer, "altitude_m", details.AltitudeMetres);
        ListingJson.Number(writer, "air_c", details.AirCelsius);
        writer.WriteString("oil_level", details.OilLevel);
        writer.WriteString("oil_look", details.OilLook);
        ListingJson.Number(writer, "oil_c", details.OilCelsius);
        writer.WriteString("oil_read", details.OilRead);
        ListingJson.Moment(writer, "opened", job.Opened);
        ListingJson.Moment(writer, "closed", job.Closed);
        writer.WriteStrings("sessions", job.SessionIds);
        writer.WriteStrings("before", job.SessionIdsOf(SessionRole.Before));
        writer.WriteStrings("after", job.SessionIdsOf(SessionRole.After));
        Release(writer, job.Release);
        writer.WriteEndObject();
    }

    private static void Release(Utf8JsonWriter writer, ReleaseState state)
    {
        writer.WriteBoolean("released", state.IsReleased);
        writer.WriteString("released_by", state.Release?.By);
        ListingJson.Moment(writer, "released_at", state.Release?.Made);
        writer.WriteStartArray("gates");
        foreach (GateState gate in state.Gates)
        {
            writer.WriteStartObject();
            writer.WriteString("gate", gate.Gate.Code);
            writer.WriteString("stage", gate.Gate.Stage switch { GateStage.Opening => "opening", GateStage.Idle => "idle", _ => "closing" });
            writer.WriteString("text", gate.Gate.Text);
            writer.WriteBoolean("ticked", gate.Tick is not null);
            writer.WriteString("by", gate.Tick?.By);
            ListingJson.Moment(writer, "at", gate.Tick?.Made);
            writer.WriteString("note", gate.Tick?.Note);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
