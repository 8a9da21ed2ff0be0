package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;
import static org.axlecause.handwritten.Facts.any;

import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.FailedPart;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Obstacle;
import org.axlecause.facts.OpenQuestion;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.facts.ScopeProposal;

/**
 * What stands in the way of the work and what it adds: what can't be loosened, bled or trusted is renewed. The owner
 * is asked for every line that an obstacle adds.
 */
final class Obstacles {

    private Obstacles() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sco401(facts);
        sco402(facts);
        sco403(facts);
        sco404(facts);
        sco405(facts);
        sco406(facts);
        sco407(facts);
        sco408(facts);
        sco409(facts);
        sco410(facts);
        sco411(facts);
        sco412(facts);
        sco413(facts);
        sco414(facts);
        sco415(facts);
        sco416(facts);
        sco417(facts);
        sco418(facts);
        sco419(facts);
        sco420(facts);
        sco421(facts);
        sco422(facts);
        sco423(facts);
        sco424(facts);
        sco425(facts);
        sco426(facts);
    }

    /** A pipe union is seized or turns its pipe. */
    private static void sco401(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.PIPE_UNION)) {
            if (obstacle.condition() == Condition.TURNS_WITH_PIPE || obstacle.condition() == Condition.SEIZED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, obstacle.place().wheel(), because("SCO-401", obstacle)));
            }
        }
    }

    /** A pipe union is stripped. */
    private static void sco402(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.PIPE_UNION)) {
            if (obstacle.condition() == Condition.STRIPPED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BRAKE_PIPE, obstacle.place().wheel(), because("SCO-402", obstacle)));
            }
        }
    }

    /** A pipe union is rounded. */
    private static void sco403(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.PIPE_UNION)) {
            if (obstacle.condition() == Condition.ROUNDED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.PIPE_NUT, obstacle.place().wheel(), because("SCO-403", obstacle)));
            }
        }
    }

    /** A bleed nipple of a drum brake is seized, sheared or stripped. */
    private static void sco404(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BLEED_NIPPLE)) {
            if ((obstacle.condition() == Condition.SEIZED
                            || obstacle.condition() == Condition.SHEARED
                            || obstacle.condition() == Condition.STRIPPED
                            || obstacle.condition() == Condition.BROKEN)
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDrum() && axle.place().sameAxle(obstacle.place()))) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.WHEEL_CYLINDER, obstacle.place().wheel(), because("SCO-404", obstacle)));
            }
        }
    }

    /** A bleed nipple of a disc brake is seized, sheared or stripped. */
    private static void sco405(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BLEED_NIPPLE)) {
            if ((obstacle.condition() == Condition.SEIZED
                            || obstacle.condition() == Condition.SHEARED
                            || obstacle.condition() == Condition.STRIPPED
                            || obstacle.condition() == Condition.BROKEN)
                    && any(
                            facts.axleStates.all(),
                            axle -> axle.axle().isDisc() && axle.place().sameAxle(obstacle.place()))) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, obstacle.place().wheel(), because("SCO-405", obstacle)));
            }
        }
    }

    /** A bleed nipple is rounded or blocked. */
    private static void sco406(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BLEED_NIPPLE)) {
            if (obstacle.condition() == Condition.ROUNDED || obstacle.condition() == Condition.BLOCKED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BLEED_NIPPLE, obstacle.place().wheel(), because("SCO-406", obstacle)));
            }
        }
    }

    /** A thread in a wheel cylinder is stripped. */
    private static void sco407(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.WHEEL_CYLINDER)) {
            if (obstacle.condition() == Condition.STRIPPED
                    || obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.CORRODED) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.WHEEL_CYLINDER, obstacle.place().wheel(), because("SCO-407", obstacle)));
            }
        }
    }

    /** A thread in a calliper is stripped. */
    private static void sco408(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.CALLIPER)) {
            if (obstacle.condition() == Condition.STRIPPED
                    || obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.CORRODED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.CALLIPER, obstacle.place().wheel(), because("SCO-408", obstacle)));
            }
        }
    }

    /** A back plate is rusted through, cracked or stripped. */
    private static void sco409(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BACK_PLATE)) {
            if (obstacle.condition() == Condition.CORRODED
                    || obstacle.condition() == Condition.CRACKED
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.STRIPPED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.BACK_PLATE, obstacle.place().wheel(), because("SCO-409", obstacle)));
            }
        }
    }

    /** An adjuster is stripped, seized, worn or broken. */
    private static void sco410(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.ADJUSTER)) {
            if (obstacle.condition() == Condition.STRIPPED
                    || obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.WORN
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.CORRODED) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.ADJUSTER, obstacle.place().wheel(), because("SCO-410", obstacle)));
            }
        }
    }

    /** A drum is seized on its shoes. */
    private static void sco411(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.DRUM)) {
            if (obstacle.condition() == Condition.SEIZED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        obstacle.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.RECOMMENDED,
                        null,
                        because("SCO-411", obstacle)));
            }
        }
    }

    /** A drum is chipped, cracked or broken on removal. */
    private static void sco412(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.DRUM)) {
            if (obstacle.condition() == Condition.BROKEN || obstacle.condition() == Condition.CRACKED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DRUM,
                        obstacle.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-412", obstacle)));
            }
        }
    }

    /** A hub has to come off to reach the drum. */
    private static void sco413(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.HUB_BEARING)) {
            if (obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.STRIPPED
                    || obstacle.condition() == Condition.BROKEN) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_BEARING, obstacle.place().wheel(), because("SCO-413", obstacle)));
            }
        }
    }

    /** A flexible hose turns with its pipe or its end is rusted in. */
    private static void sco414(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.FLEXIBLE_HOSE)) {
            if (obstacle.condition() == Condition.TURNS_WITH_PIPE
                    || obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.CORRODED
                    || obstacle.condition() == Condition.ROUNDED) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.FLEXIBLE_HOSE, obstacle.place().wheel(), because("SCO-414", obstacle)));
            }
        }
    }

    /** A wheel bolt or drum screw does not come out. */
    private static void sco415(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.WHEEL_BOLT)) {
            if (obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.SHEARED
                    || obstacle.condition() == Condition.ROUNDED
                    || obstacle.condition() == Condition.STRIPPED
                    || obstacle.condition() == Condition.BROKEN) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.WHEEL_BOLT, obstacle.place().wheel(), because("SCO-415", obstacle)));
            }
        }
    }

    /** A disc is seized on its hub and breaks. */
    private static void sco416(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.DISC)) {
            if (obstacle.condition() == Condition.BROKEN || obstacle.condition() == Condition.CRACKED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.DISC,
                        obstacle.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-416", obstacle)));
            }
        }
    }

    /** A slide pin cannot be freed. */
    private static void sco417(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.SLIDE_PIN)) {
            if (obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.CORRODED
                    || obstacle.condition() == Condition.STRIPPED) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.SLIDE_PIN_KIT, obstacle.place().wheel(), because("SCO-417", obstacle)));
            }
        }
    }

    /** A parking cable does not come free. */
    private static void sco418(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.PARKING_CABLE)) {
            if (obstacle.condition() == Condition.SEIZED
                    || obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.FRAYED
                    || obstacle.condition() == Condition.CORRODED) {
                facts.failedParts.draw(new FailedPart(
                        ScopeItem.PARKING_CABLE, obstacle.place().wheel(), because("SCO-418", obstacle)));
            }
        }
    }

    /** Springs or hold-downs break or come out damaged. */
    private static void sco419(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.RETURN_SPRING)) {
            if (obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.STRETCHED
                    || obstacle.condition() == Condition.MISSING
                    || obstacle.condition() == Condition.CORRODED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        obstacle.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-419", obstacle)));
            }
        }
    }

    /** Hold-downs break or come out damaged. */
    private static void sco420(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.HOLD_DOWN)) {
            if (obstacle.condition() == Condition.BROKEN
                    || obstacle.condition() == Condition.STRETCHED
                    || obstacle.condition() == Condition.MISSING
                    || obstacle.condition() == Condition.CORRODED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.RENEW,
                        ScopeItem.HARDWARE_KIT,
                        obstacle.place().axlePlace(),
                        ScopeExtent.AXLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-420", obstacle)));
            }
        }
    }

    /** The reservoir runs empty during the work on a vehicle that may have an anti-lock system. */
    private static void sco421(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BRAKE_FLUID)) {
            if ((obstacle.condition() == Condition.LOW || obstacle.condition() == Condition.NOT_VISIBLE)
                    && any(
                            facts.vehicleLayouts.all(),
                            layout -> !Boolean.FALSE.equals(layout.vehicle().antilock()))) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.ANTILOCK_MODULATOR,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-421", obstacle)));
            }
        }
    }

    /** A new part does not match the old one. */
    private static void sco422(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.all()) {
            if (obstacle.condition() == Condition.WRONG_PART) {
                facts.openQuestions.draw(new OpenQuestion(
                        QuestionCode.CONTRADICTION,
                        obstacle.place(),
                        "The new part differs from the old one.",
                        "Stop at a safe point, keep the other side as it is, and order the part that matches.",
                        because("SCO-422", obstacle)));
            }
        }
    }

    /** An electric parking brake does not enter its service mode. */
    private static void sco423(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.ELECTRIC_PARKING_ACTUATOR)) {
            facts.openQuestions.draw(new OpenQuestion(
                    QuestionCode.CONTRADICTION,
                    obstacle.place(),
                    "The electric parking brake does not do what the work needs.",
                    "Support the battery and have a specialist read the fault memory before anything is forced.",
                    because("SCO-423", obstacle)));
        }
    }

    /** A drum is one with its hub and cannot be reached without taking it off. */
    private static void sco424(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.DRUM)) {
            if (obstacle.condition() == Condition.NOT_ACCESSIBLE) {
                facts.failedParts.draw(
                        new FailedPart(ScopeItem.HUB_BEARING, obstacle.place().wheel(), because("SCO-424", obstacle)));
            }
        }
    }

    /** The reservoir runs empty during the work. */
    private static void sco425(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.BRAKE_FLUID)) {
            if (obstacle.condition() == Condition.LOW || obstacle.condition() == Condition.NOT_VISIBLE) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.BLEED,
                        ScopeItem.BRAKE_FLUID,
                        Place.VEHICLE,
                        ScopeExtent.VEHICLE,
                        Necessity.REQUIRED,
                        null,
                        because("SCO-425", obstacle)));
            }
        }
    }

    /** A drum or disc is rusted onto its hub. */
    private static void sco426(Facts facts) {
        for (Obstacle obstacle : facts.obstacles.of(Component.HUB_FLANGE)) {
            if (obstacle.condition() == Condition.SEIZED || obstacle.condition() == Condition.CORRODED) {
                facts.scopeProposals.draw(new ScopeProposal(
                        ScopeAction.CLEAN,
                        ScopeItem.HUB_FACE,
                        obstacle.place().wheel(),
                        obstacle.extent(),
                        Necessity.REQUIRED,
                        null,
                        because("SCO-426", obstacle)));
            }
        }
    }
}
