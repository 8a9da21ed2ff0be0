package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.none;

import org.axlecause.facts.AwaitedEvidence;
import org.axlecause.facts.ClauseCode;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.FluidRenewed;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.NeededEvidence;
import org.axlecause.facts.Place;
import org.axlecause.facts.PolicyClause;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;
import org.axlecause.facts.VehicleLayout;

/**
 * What the policy of the chain asks for beyond the trade: a twin renewed for its age alone, more pipe than the failed
 * one, fluid renewed by the calendar, and what must be on record before a line counts as scoped.
 */
final class AskedByPolicy {

    private AskedByPolicy() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco854(facts);
        sco851(facts);
        sco852(facts);
        sco853(facts);
    }

    /** Draws what depends on all lines. */
    static void close(Facts facts) {
        sco841(facts);
        sco842(facts);
    }

    /** A line waits for a measurement that the policy wants first. */
    private static void sco841(Facts facts) {
        for (NeededEvidence needed : facts.neededEvidence.all()) {
            if (needed.isMeasured()) {
                for (DueLine line : facts.dueLines.all()) {
                    if (line.action() == needed.action()
                            && line.item() == needed.item()
                            && none(facts.linesDone.all(), done -> done.line().equals(line.line()))
                            && none(
                                    facts.partStates.all(),
                                    state -> state.measurement() != null
                                            && state.measurement().quantity() == needed.quantity()
                                            && state.place().sharesAxleWith(line.place()))
                            && none(
                                    facts.departures.all(),
                                    departure -> departure.clause() == ClauseCode.NEEDED_MEASUREMENT
                                            && departure.isOn(line.line()))) {
                        facts.awaitedEvidence.draw(new AwaitedEvidence(
                                line.line(), needed.clause(), needed.what(), because("SCO-841", line, needed)));
                    }
                }
            }
        }
    }

    /** A line waits for a photo that the policy wants first. */
    private static void sco842(Facts facts) {
        for (NeededEvidence needed : facts.neededEvidence.all()) {
            if (!needed.isMeasured()) {
                for (DueLine line : facts.dueLines.all()) {
                    if (line.action() == needed.action()
                            && line.item() == needed.item()
                            && none(facts.linesDone.all(), done -> done.line().equals(line.line()))
                            && none(
                                    facts.photosTaken.all(),
                                    photo -> photo.item() == needed.item()
                                            && photo.place().sharesAxleWith(line.place()))
                            && none(
                                    facts.departures.all(),
                                    departure -> departure.clause() == ClauseCode.NEEDED_PHOTO
                                            && departure.isOn(line.line()))) {
                        facts.awaitedEvidence.draw(new AwaitedEvidence(
                                line.line(), needed.clause(), needed.what(), because("SCO-842", line, needed)));
                    }
                }
            }
        }
    }

    /** The wheel cylinder opposite a failed one has reached the age at which the policy renews both. */
    private static void sco851(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.WHEEL_CYLINDER)) {
            if (failed.isAtWheel()
                    && none(
                            facts.latelyRenewed.of(ScopeItem.WHEEL_CYLINDER),
                            renewed -> renewed.place().covers(failed.place().opposite()))) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.TWIN_HYDRAULIC_REQUIRED_AGE)) {
                    if (clause.value() != null) {
                        for (VehicleLayout vehicle : facts.vehicleLayouts.all()) {
                            if (vehicle.ageInYears() != null
                                    && vehicle.ageInYears().compareTo(clause.value()) >= 0) {
                                facts.scopeProposals.draw(new ScopeProposal(
                                        ScopeAction.RENEW,
                                        ScopeItem.WHEEL_CYLINDER,
                                        failed.place().opposite(),
                                        ScopeExtent.WHEEL,
                                        Necessity.REQUIRED,
                                        clause.code(),
                                        because("SCO-851", failed, clause, vehicle)));
                            }
                        }
                    }
                }
            }
        }
    }

    /** A brake pipe has to go and the policy renews those of the axle together. */
    private static void sco852(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BRAKE_PIPE)) {
            if (failed.isAtWheel()) {
                for (PolicyClause clause : facts.policyClauses.of(ClauseCode.PIPE_EXTENT)) {
                    if (clause.extent() == ScopeExtent.AXLE) {
                        facts.scopeProposals.draw(new ScopeProposal(
                                ScopeAction.FABRICATE,
                                ScopeItem.BRAKE_PIPE,
                                failed.place().axlePlace(),
                                ScopeExtent.AXLE,
                                Necessity.REQUIRED,
                                clause.code(),
                                because("SCO-852", failed, clause)));
                    }
                }
            }
        }
    }

    /** A brake pipe has to go and the policy renews all pipes together. */
    private static void sco853(Facts facts) {
        for (FailedPart failed : facts.failedParts.of(ScopeItem.BRAKE_PIPE)) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.PIPE_EXTENT)) {
                if (clause.extent() == ScopeExtent.VEHICLE) {
                    facts.scopeProposals.draw(new ScopeProposal(
                            ScopeAction.FABRICATE,
                            ScopeItem.BRAKE_PIPE,
                            Place.VEHICLE,
                            ScopeExtent.VEHICLE,
                            Necessity.REQUIRED,
                            clause.code(),
                            because("SCO-853", failed, clause)));
                }
            }
        }
    }

    /** The brake fluid is older than the policy lets it become. */
    private static void sco854(Facts facts) {
        for (FluidRenewed fluid : facts.fluidRenewed.all()) {
            for (PolicyClause clause : facts.policyClauses.of(ClauseCode.FLUID_AGE)) {
                if (clause.value() != null && fluid.years().compareTo(clause.value()) >= 0) {
                    for (PolicyClause renewal : facts.policyClauses.of(ClauseCode.FLUID_RENEWAL)) {
                        if (renewal.necessity() != null) {
                            facts.scopeProposals.draw(new ScopeProposal(
                                    ScopeAction.RENEW,
                                    ScopeItem.BRAKE_FLUID,
                                    Place.VEHICLE,
                                    ScopeExtent.VEHICLE,
                                    renewal.necessity(),
                                    renewal.code(),
                                    because("SCO-854", fluid, clause, renewal)));
                        }
                    }
                }
            }
        }
    }
}
