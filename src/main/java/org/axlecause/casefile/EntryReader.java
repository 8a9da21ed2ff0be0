package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.math.BigDecimal;
import org.axlecause.facts.Accuracy;
import org.axlecause.facts.Agent;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleReading;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.CaseClosed;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.CloseOutcome;
import org.axlecause.facts.ComplaintCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Decision;
import org.axlecause.facts.DepartureRecorded;
import org.axlecause.facts.Deviation;
import org.axlecause.facts.Drive;
import org.axlecause.facts.Entry;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.EntryType;
import org.axlecause.facts.EntryWithdrawn;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingRecorded;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.FittedPart;
import org.axlecause.facts.Gearbox;
import org.axlecause.facts.InspectionResult;
import org.axlecause.facts.InspectionResulted;
import org.axlecause.facts.JudgedCause;
import org.axlecause.facts.LineDecision;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NoticedDeficiency;
import org.axlecause.facts.ObstacleMet;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.Party;
import org.axlecause.facts.PolicyAdopted;
import org.axlecause.facts.PresentationReason;
import org.axlecause.facts.RecentWork;
import org.axlecause.facts.RoadTestRecorded;
import org.axlecause.facts.RollerTestRecorded;
import org.axlecause.facts.ScopeDecided;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Stage;
import org.axlecause.facts.Surface;
import org.axlecause.facts.TestCondition;
import org.axlecause.facts.Tester;
import org.axlecause.facts.Trace;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleHandedOver;
import org.axlecause.facts.VehiclePresented;
import org.axlecause.facts.WheelReading;
import org.axlecause.facts.WorkOutcome;
import org.axlecause.facts.WorkReported;
import org.axlecause.shared.Dimension;
import org.jspecify.annotations.Nullable;

/** Reads the data of an event that has passed the checks into an entry, with every quantity in base units. */
public final class EntryReader {

    private EntryReader() {}

    /** The entry that the data of an event of this type says. */
    public static Entry read(EntryType type, JsonNode data) {
        Members members = new Members(data);
        return switch (type) {
            case VEHICLE_PRESENTED -> presented(members);
            case ROLLER_TEST_RECORDED -> rollerTest(members);
            case ROAD_TEST_RECORDED -> roadTest(members);
            case FINDING_RECORDED -> finding(members);
            case OBSTACLE_MET ->
                new ObstacleMet(
                        members.code("component", Component.class),
                        members.code("condition", Condition.class),
                        members.place(),
                        members.textOrNull("note"));
            case SCOPE_DECIDED -> new ScopeDecided(members.objects("decisions", EntryReader::decision));
            case WORK_REPORTED ->
                new WorkReported(
                        members.text("step"),
                        members.code("outcome", WorkOutcome.class),
                        members.objects("parts", EntryReader::part));
            case DEPARTURE_RECORDED ->
                new DepartureRecorded(
                        members.code("clause", ClauseCode.class),
                        members.textOrNull("line"),
                        members.text("reason"),
                        members.text("by"));
            case POLICY_ADOPTED ->
                new PolicyAdopted(
                        members.text("policy"), members.integer("version"), members.text("reason"), members.text("by"));
            case ENTRY_WITHDRAWN ->
                new EntryWithdrawn(new EntryId(members.text("source"), members.text("id")), members.text("reason"));
            case VEHICLE_HANDED_OVER ->
                new VehicleHandedOver(members.texts("advised"), members.flagOrNull("refusalNoted"));
            case INSPECTION_RESULTED ->
                new InspectionResulted(
                        members.code("result", InspectionResult.class), members.objects("items", EntryReader::notice));
            case CASE_CLOSED ->
                new CaseClosed(
                        members.code("outcome", CloseOutcome.class),
                        members.objects("confirmedCauses", EntryReader::judgedCause));
        };
    }

    private static VehiclePresented presented(Members members) {
        return new VehiclePresented(
                members.text("site"),
                members.code("reason", PresentationReason.class),
                members.textOrNull("previousCase"),
                members.textOrNull("regime"),
                vehicle(members.object("vehicle")),
                members.objects("notice", EntryReader::notice),
                members.codes("complaints", ComplaintCode.class),
                members.objects("recentWork", EntryReader::recentWork));
    }

    private static Vehicle vehicle(Members members) {
        return new Vehicle(
                members.text("category"),
                members.textOrNull("make"),
                members.textOrNull("model"),
                members.dayOrNull("firstUsed"),
                members.dayOrNull("firstRegistered"),
                members.dayOrNull("typeApproved"),
                members.quantityOrNull("odometer", Dimension.LENGTH),
                members.quantityOrNull("maximumMass", Dimension.MASS),
                members.quantityOrNull("unladenMass", Dimension.MASS),
                members.quantityOrNull("testMass", Dimension.MASS),
                members.integerOrNull("seats"),
                members.codeOrNull("drive", Drive.class),
                members.codeOrNull("gearbox", Gearbox.class),
                members.flagOrNull("regenerative"),
                members.flagOrNull("airSuspension"),
                members.codeOrNull("circuitSplit", CircuitSplit.class),
                members.flagOrNull("antilock"),
                members.textOrNull("serviceFluid"),
                members.objects("axles", EntryReader::axle),
                identity(members));
    }

    /** The token that stands for the VIN, or for the registration where no VIN was sent. */
    private static @Nullable String identity(Members members) {
        String vin = members.textOrNull("vin");
        return vin != null ? vin : members.textOrNull("registration");
    }

    private static Axle axle(Members members) {
        ParkingLayout parking = members.codeOrNull("parkingBrake", ParkingLayout.class);
        return new Axle(
                members.integer("number"),
                Boolean.TRUE.equals(members.flagOrNull("steered")),
                members.codeOrNull("brake", BrakeLayout.class),
                parking == null ? ParkingLayout.NONE : parking);
    }

    private static NoticedDeficiency notice(Members members) {
        return new NoticedDeficiency(members.text("item"), members.textOrNull("text"));
    }

    private static RecentWork recentWork(Members members) {
        return new RecentWork(
                members.code("item", ScopeItem.class),
                members.place(),
                members.dayOrNull("date"),
                members.quantityOrNull("distanceSince", Dimension.LENGTH));
    }

    private static RollerTestRecorded rollerTest(Members members) {
        return new RollerTestRecorded(
                members.code("stage", Stage.class),
                members.code("brake", BrakeSystem.class),
                members.objects("axles", EntryReader::reading),
                members.objectOrNull("tester", EntryReader::tester),
                members.codeOrNull("surface", Surface.class),
                members.quantityOrNull("pedalForce", Dimension.FORCE),
                members.codes("conditions", TestCondition.class));
    }

    private static Tester tester(Members members) {
        Members accuracy = members.objectOrNull("accuracy", given -> given);
        return new Tester(
                members.quantityOrNull("accuracy", Dimension.RATIO),
                accuracy == null ? null : accuracy.codeOrNull("of", Accuracy.class),
                members.quantityOrNull("range", Dimension.FORCE),
                members.quantityOrNull("resolution", Dimension.FORCE),
                members.quantityOrNull("speed", Dimension.SPEED));
    }

    private static AxleReading reading(Members members) {
        return new AxleReading(
                members.integer("number"),
                members.quantityOrNull("load", Dimension.MASS),
                members.objectOrNull("left", EntryReader::wheel),
                members.objectOrNull("right", EntryReader::wheel),
                members.objectOrNull("trace", EntryReader::trace));
    }

    private static WheelReading wheel(Members members) {
        return new WheelReading(
                members.quantityOrNull("peak", Dimension.FORCE),
                members.quantityOrNull("drag", Dimension.FORCE),
                members.quantityOrNull("fluctuation", Dimension.RATIO),
                members.flagOrNull("locked"),
                members.quantityOrNull("expected", Dimension.FORCE));
    }

    private static Trace trace(Members members) {
        String unit = members.text("unit");
        return new Trace(
                members.quantity("samplePeriod", Dimension.TIME),
                members.samples("left", unit),
                members.samples("right", unit),
                members.objectOrNull("pedal", pedal -> pedal.samples("force", pedal.text("unit"))));
    }

    private static RoadTestRecorded roadTest(Members members) {
        return new RoadTestRecorded(
                members.code("stage", Stage.class),
                members.code("brake", BrakeSystem.class),
                members.quantityOrNull("initialSpeed", Dimension.SPEED),
                members.quantityOrNull("meanFullyDevelopedDeceleration", Dimension.ACCELERATION),
                members.quantityOrNull("beginSpeed", Dimension.SPEED),
                members.quantityOrNull("endSpeed", Dimension.SPEED),
                members.quantityOrNull("beginDistance", Dimension.LENGTH),
                members.quantityOrNull("endDistance", Dimension.LENGTH),
                members.quantityOrNull("stoppingDistance", Dimension.LENGTH),
                members.codeOrNull("deviation", Deviation.class));
    }

    private static FindingRecorded finding(Members members) {
        return new FindingRecorded(
                members.code("stage", FindingStage.class),
                members.code("component", Component.class),
                members.code("condition", Condition.class),
                members.place(),
                members.codeOrNull("check", CheckCode.class),
                members.codeOrNull("extent", Extent.class),
                members.codeOrNull("agent", Agent.class),
                members.objectOrNull("measurement", EntryReader::measurement),
                members.textOrNull("note"),
                members.texts("evidence"));
    }

    private static Measurement measurement(Members members) {
        MeasuredQuantity quantity = members.code("quantity", MeasuredQuantity.class);
        Dimension dimension = dimension(quantity);
        return new Measurement(
                quantity,
                members.converted(dimension),
                members.quantityOrNull("limit", dimension),
                members.decimal("value").toPlainString() + " " + members.text("unit"));
    }

    /** What a measured quantity is: lengths, but for the few that are not. */
    static Dimension dimension(MeasuredQuantity quantity) {
        return switch (quantity) {
            case FLUID_BOILING_POINT -> Dimension.TEMPERATURE;
            case FLUID_WATER_CONTENT, PEDAL_RESERVE -> Dimension.RATIO;
            case LEVER_TRAVEL -> Dimension.NUMBER;
            case LINING_THICKNESS,
                    PAD_THICKNESS,
                    DRUM_DIAMETER,
                    DRUM_OVALITY,
                    DRUM_ECCENTRICITY,
                    DISC_THICKNESS,
                    DISC_THICKNESS_VARIATION,
                    DISC_RUN_OUT,
                    CYLINDER_BORE,
                    HUB_PLAY -> Dimension.LENGTH;
        };
    }

    private static LineDecision decision(Members members) {
        Members estimate = members.objectOrNull("estimate", given -> given);
        @Nullable BigDecimal amount = estimate == null ? null : new BigDecimal(estimate.text("amount"));
        return new LineDecision(
                members.text("id"),
                members.code("decision", Decision.class),
                members.code("by", Party.class),
                members.textOrNull("reason"),
                members.codeOrNull("necessity", Necessity.class),
                members.decimalOrNull("quantity"),
                amount,
                estimate == null ? null : estimate.text("currency"),
                members.textOrNull("alternative"));
    }

    private static FittedPart part(Members members) {
        return new FittedPart(
                members.code("item", ScopeItem.class),
                members.place(),
                members.decimalOrNull("quantity"),
                members.textOrNull("number"),
                members.flagOrNull("matchedOld"));
    }

    private static JudgedCause judgedCause(Members members) {
        return new JudgedCause(members.code("code", CauseCode.class), members.place());
    }
}
