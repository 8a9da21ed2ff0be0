package org.axlecause.diagnosis;

import java.util.List;
import org.axlecause.facts.Axle;
import org.axlecause.facts.BrakeLayout;
import org.axlecause.facts.CauseCode;
import org.axlecause.facts.ParkingLayout;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.Spot;
import org.axlecause.facts.Vehicle;
import org.axlecause.facts.Verified;
import org.jspecify.annotations.Nullable;

/**
 * A cause of the cause model.
 *
 * @param code its code
 * @param text what it is, one sentence
 * @param level kind of place it is at
 * @param spots parts of a wheel brake that its findings may name
 * @param brakes layouts of wheel brake it needs; none means all
 * @param parking layouts of parking brake it needs; none means all
 * @param only what vehicle or axle must have
 * @param weights how often it is behind a complaint
 * @param bothSides share of cases that have it on both wheels of the axle; null where the sides don't depend
 * @param alike whether a cause of an axle works on both its wheels alike, so that it shows at both or not at all
 * @param links what it shows and leaves
 * @param provedBy lists of findings and circumstances that prove it together
 * @param refutedBy lists of findings and circumstances that rule it out together
 * @param excludes causes that can't be at the same place
 * @param likelierAfter work after which it is likelier
 * @param asksUpstream whether something must have brought it about
 * @param neverFirst whether something else always brings it about, so that no chain begins with it
 * @param needsWork whether only work on the vehicle brings it about
 * @param signature what it makes the scope
 * @param weighed standing of weights and strengths
 * @param known standing of what is said about it
 * @param source document and section, or whose knowledge it is
 */
public record Cause(
        CauseCode code,
        String text,
        Level level,
        List<Spot> spots,
        List<BrakeLayout> brakes,
        List<ParkingLayout> parking,
        List<Trait> only,
        Weights weights,
        @Nullable Double bothSides,
        boolean alike,
        List<Link> links,
        List<List<String>> provedBy,
        List<List<String>> refutedBy,
        List<CauseCode> excludes,
        List<ScopeItem> likelierAfter,
        boolean asksUpstream,
        boolean neverFirst,
        boolean needsWork,
        List<ScopeMark> signature,
        Verified weighed,
        Verified known,
        String source) {

    /** Whether it can be on that axle. */
    boolean fits(Vehicle vehicle, Axle axle) {
        return axle.brake() != null
                && (brakes.isEmpty() || brakes.contains(axle.brake()))
                && (parking.isEmpty() || parking.contains(axle.parkingBrake()))
                && only.stream().allMatch(trait -> trait.holds(vehicle, axle));
    }

    /** Whether it shows in a first run only and a second one tells. */
    boolean passes() {
        return links.stream().anyMatch(Link::firstRunOnly);
    }

    /** Whether it can be on that vehicle, where it is at no axle of its own. */
    boolean fits(Vehicle vehicle) {
        return only.stream().allMatch(trait -> trait.holds(vehicle, null));
    }
}
