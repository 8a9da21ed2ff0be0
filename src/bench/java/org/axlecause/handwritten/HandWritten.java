package org.axlecause.handwritten;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.axlecause.facts.Conclusion;
import org.axlecause.facts.DueLine;
import org.axlecause.facts.ScopeProposal;

/**
 * Draws from facts what the rule base concludes from them, by loops that were written for the purpose: what a
 * programmer would write who needed no rule base. It keeps the facts that cases share from one case to the next and
 * serves one thread.
 */
public final class HandWritten {

    /** As many sets of shared facts are kept as the rule base keeps sessions. */
    private static final int MOST_HELD = 32;

    private final List<Held> held = new ArrayList<>();

    /**
     * Facts that cases share.
     *
     * @param shared the facts
     * @param facts they alone, sorted
     */
    private record Held(List<? extends List<?>> shared, Facts facts) {}

    /** All conclusions, in no stated order, from the facts of a case beside those that many cases share. */
    public List<Conclusion> conclude(List<? extends List<?>> shared, Collection<?> ofTheCase) {
        Facts facts = holding(shared);
        try {
            facts.tell(ofTheCase);
            deficiencies(facts);
            symptoms(facts);
            causes(facts);
            scope(facts);
            work(facts);
            outcome(facts);
            return facts.conclusions();
        } finally {
            facts.forget();
        }
    }

    /** What was used last comes first; what was used least lately goes. */
    private Facts holding(List<? extends List<?>> shared) {
        int at = 0;
        while (at < held.size() && !held.get(at).shared.equals(shared)) {
            at++;
        }
        Held found = at < held.size() ? held.remove(at) : new Held(List.copyOf(shared), Facts.shared(shared));
        held.add(0, found);
        if (held.size() > MOST_HELD) {
            held.remove(MOST_HELD);
        }
        return found.facts;
    }

    private static void deficiencies(Facts facts) {
        RegimeGaps.conclude(facts);
        ServiceBrakeDeficiencies.conclude(facts);
        ParkingBrakeDeficiencies.conclude(facts);
        SecondaryBrakeDeficiencies.conclude(facts);
        JudgedByEye.conclude(facts);
        Grabbing.conclude(facts);
        FindingDeficiencies.conclude(facts);
        WorkshopLimits.conclude(facts);
        CloseCalls.conclude(facts);
        UnconfirmedLimits.conclude(facts);
    }

    private static void symptoms(Facts facts) {
        WeakWheels.conclude(facts);
        ExpectedForces.conclude(facts);
        ShapesOfLoss.conclude(facts);
        Timing.conclude(facts);
        Swing.conclude(facts);
        Drag.conclude(facts);
        ParkingBrakeSymptoms.conclude(facts);
        SecondRuns.conclude(facts);
        PedalAndLamps.conclude(facts);
        Complaints.conclude(facts);
        UnsteadyAxles.conclude(facts);
        BarredChecks.conclude(facts);
    }

    private static void causes(Facts facts) {
        WheelCylinders.conclude(facts);
        Callipers.conclude(facts);
        HosesAndPipes.conclude(facts);
        MasterAndServo.conclude(facts);
        FluidAndValves.conclude(facts);
        Linings.conclude(facts);
        ShoeHardware.conclude(facts);
        ParkingBrakeCauses.conclude(facts);
        HubTyreTest.conclude(facts);
        DrumsAndDiscs.conclude(facts);
        Circumstances.conclude(facts);
        Exclusions.conclude(facts);
        ExplainingAway.conclude(facts);
    }

    private static void scope(Facts facts) {
        StandingLeaks.conclude(facts);
        FailedHydraulics.conclude(facts);
        FailedMechanics.conclude(facts);
        Hardware.conclude(facts);
        FrictionSurfaces.conclude(facts);
        SoiledLinings.conclude(facts);
        FluidAndUnits.conclude(facts);
        Obstacles.conclude(facts);
        Renewals.conclude(facts);
        PlacesLookedAt.conclude(facts);
        AskedByPolicy.conclude(facts);
        followLines(facts);
        PlacesLookedAt.close(facts);
        AskedByPolicy.close(facts);
    }

    /** Lines that are due bring lines with them, which may be due in turn. */
    private static void followLines(Facts facts) {
        List<ScopeProposal> lines = facts.scopeProposals.all();
        List<DueLine> due = facts.dueLines.all();
        int followed = 0;
        for (int at = 0; at < lines.size(); at++) {
            DueLines.conclude(facts, lines.get(at));
            while (followed < due.size()) {
                DueLine line = due.get(followed++);
                Consequences.conclude(facts, line);
                FrictionSurfaces.follow(facts, line);
                Hardware.follow(facts, line);
                FluidAndUnits.follow(facts, line);
            }
        }
    }

    private static void work(Facts facts) {
        WorkedWheels.conclude(facts);
        BarredTests.conclude(facts);
        EntryAndExit.conclude(facts);
        HydraulicsWork.conclude(facts);
        DrumAxle.conclude(facts);
        DiscAxle.conclude(facts);
        ParkingBrakeWork.conclude(facts);
        Cautions.conclude(facts);
        UnaskedLines.conclude(facts);
    }

    private static void outcome(Facts facts) {
        WhatStands.conclude(facts);
        Verification.conclude(facts);
        FitnessLeaksAndFluid.conclude(facts);
        FitnessParts.conclude(facts);
        FitnessTestsAndWork.conclude(facts);
    }
}
