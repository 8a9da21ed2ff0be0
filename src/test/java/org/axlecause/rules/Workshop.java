package org.axlecause.rules;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.AxleState;
import org.axlecause.facts.Because;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.CauseStanding;
import org.axlecause.facts.CircuitSplit;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.DecidedLine;
import org.axlecause.facts.Decision;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.Extent;
import org.axlecause.facts.FindingStage;
import org.axlecause.facts.LineKey;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Measurement;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Obstacle;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.PartState;
import org.axlecause.facts.Party;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.SettledCause;
import org.axlecause.facts.Side;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.VehicleLayout;
import org.axlecause.facts.Verified;
import org.jspecify.annotations.Nullable;

/** Facts of the second call of the rule base, named after what a workshop would say. */
final class Workshop {

    static final Place REAR = Place.ofAxle(2);
    static final Place REAR_LEFT = Place.ofWheel(2, Side.LEFT);
    static final Place REAR_RIGHT = Place.ofWheel(2, Side.RIGHT);
    static final Place FRONT = Place.ofAxle(1);
    static final Place FRONT_LEFT = Place.ofWheel(1, Side.LEFT);
    static final Place FRONT_RIGHT = Place.ofWheel(1, Side.RIGHT);

    private static final Axle DISC_AXLE = new Axle(1, true, BrakeLayout.DISC_FLOATING, ParkingLayout.NONE);
    private static final Axle DRUM_AXLE =
            new Axle(2, false, BrakeLayout.DRUM_SIMPLEX, ParkingLayout.CABLE_ON_SERVICE_SHOES);

    private Workshop() {}

    static SettledCause confirmed(CauseCode code, Place place) {
        return new SettledCause(code, place, CauseStanding.CONFIRMED, true);
    }

    static SettledCause suspected(CauseCode code, Place place) {
        return new SettledCause(code, place, CauseStanding.SUSPECTED, true);
    }

    static SettledCause ruledOut(CauseCode code, Place place) {
        return new SettledCause(code, place, CauseStanding.RULED_OUT, false);
    }

    static PartState found(Component component, Condition condition, Place place) {
        return state(FindingStage.AS_FOUND, component, condition, place, null, null);
    }

    static PartState found(Component component, Condition condition, Place place, Extent extent) {
        return state(FindingStage.AS_FOUND, component, condition, place, extent, null);
    }

    static PartState afterWork(Component component, Condition condition, Place place) {
        return state(FindingStage.AFTER_WORK, component, condition, place, null, null);
    }

    /** A measured value in SI units; the stamped limit may be null. */
    static PartState measured(
            Component component, Place place, MeasuredQuantity quantity, String value, @Nullable String limit) {
        return state(
                FindingStage.AS_FOUND,
                component,
                Condition.SOUND,
                place,
                null,
                new Measurement(
                        quantity,
                        new BigDecimal(value),
                        limit == null ? null : new BigDecimal(limit),
                        value + " (SI)"));
    }

    /** A required line that rules of the scope proposed. */
    static ScopeProposal proposed(ScopeAction action, ScopeItem item, Place place) {
        return proposed(action, item, place, Necessity.REQUIRED);
    }

    static ScopeProposal proposed(ScopeAction action, ScopeItem item, Place place, Necessity necessity) {
        return new ScopeProposal(
                action,
                item,
                place,
                place.isWheel() ? ScopeExtent.WHEEL : ScopeExtent.AXLE,
                necessity,
                null,
                new Because("SCO-000", List.of("given")));
    }

    static VehicleLayout regenerativeVan() {
        return van(CircuitSplit.DIAGONAL, LocalDate.of(2015, 9, 14), "148200000", true, true, false);
    }

    static VehicleLayout airSuspendedVan() {
        return van(CircuitSplit.DIAGONAL, LocalDate.of(2015, 9, 14), "148200000", true, false, true);
    }

    static Obstacle obstacle(Component component, Condition condition, Place place) {
        return new Obstacle(new EntryId("/sites/quay-street", "ob-1"), component, condition, place);
    }

    static PolicyClause clause(ClauseCode code, Necessity necessity) {
        return new PolicyClause(code, null, necessity, "workshop habit", Verified.COMMON_PRACTICE, false);
    }

    static PolicyClause clause(ClauseCode code, String value) {
        return new PolicyClause(code, new BigDecimal(value), null, "workshop habit", Verified.COMMON_PRACTICE, false);
    }

    static PolicyClause clause(ClauseCode code, String value, Necessity necessity) {
        return new PolicyClause(
                code, new BigDecimal(value), necessity, "workshop habit", Verified.COMMON_PRACTICE, false);
    }

    static DecidedLine decided(LineKey line, Decision decision) {
        return new DecidedLine(line, decision, Party.CUSTOMER);
    }

    static AxleState discFront() {
        return new AxleState(DISC_AXLE, false, false);
    }

    static AxleState drumRear() {
        return new AxleState(DRUM_AXLE, false, false);
    }

    static AxleState openedDrumRear(boolean bothLookedAt) {
        return new AxleState(DRUM_AXLE, true, bothLookedAt);
    }

    static AxleState discWithParking(ParkingLayout parking) {
        return new AxleState(new Axle(2, false, BrakeLayout.DISC_FLOATING, parking), false, false);
    }

    /** A delivery van of eleven years and 148 200 km with diagonal circuits and an anti-lock system. */
    static VehicleLayout van() {
        return van(CircuitSplit.DIAGONAL, LocalDate.of(2015, 9, 14), "148200000", true);
    }

    static VehicleLayout van(
            @Nullable CircuitSplit split,
            @Nullable LocalDate firstUsed,
            @Nullable String odometer,
            @Nullable Boolean antilock) {
        return van(split, firstUsed, odometer, antilock, false, false);
    }

    private static VehicleLayout van(
            @Nullable CircuitSplit split,
            @Nullable LocalDate firstUsed,
            @Nullable String odometer,
            @Nullable Boolean antilock,
            boolean regenerative,
            boolean airSuspension) {
        return new VehicleLayout(
                new Vehicle(
                        "N1",
                        "Corvane",
                        "Portal",
                        firstUsed,
                        null,
                        null,
                        odometer == null ? null : new BigDecimal(odometer),
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        regenerative,
                        airSuspension,
                        split,
                        antilock,
                        "DOT 4",
                        List.of(DISC_AXLE, DRUM_AXLE),
                        null),
                LocalDate.of(2026, 3, 2));
    }

    private static PartState state(
            FindingStage stage,
            Component component,
            Condition condition,
            Place place,
            @Nullable Extent extent,
            @Nullable Measurement measurement) {
        return new PartState(
                new EntryId("/sites/quay-street", component + "-" + place.id()),
                stage,
                component,
                condition,
                place,
                extent,
                null,
                measurement);
    }
}
