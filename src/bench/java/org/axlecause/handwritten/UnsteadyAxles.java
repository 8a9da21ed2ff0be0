package org.axlecause.handwritten;

import static org.axlecause.facts.Because.because;

import org.axlecause.facts.Axle;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.Finding;
import org.axlecause.facts.Place;
import org.axlecause.facts.Symptom;
import org.axlecause.facts.SymptomCode;
import org.axlecause.facts.UnsteadyAxle;

/**
 * What makes an axle read differently from run to run by itself: what drags, sticks, is rough or has play. On such an
 * axle another reading in a second run proves neither a film of rust nor the limit of grip.
 */
final class UnsteadyAxles {

    private UnsteadyAxles() {}

    /** Draws what the rules of the file conclude. */
    static void conclude(Facts facts) {
        sym411(facts);
        sym412(facts);
        sym413(facts);
        sym414(facts);
        sym415(facts);
        sym410(facts);
    }

    /** A wheel of the axle drags. */
    private static void sym410(Facts facts) {
        for (Symptom drags : facts.symptoms.all()) {
            if ((drags.code() == SymptomCode.DRAG_ONE_WHEEL || drags.code() == SymptomCode.DRAG_AXLE)
                    && drags.place().axle() != null) {
                facts.unsteadyAxles.draw(new UnsteadyAxle(drags.place().axlePlace(), because("SYM-410", drags)));
            }
        }
    }

    /** A disc or drum of the axle has a rough surface. */
    private static void sym411(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if ((finding.component() == Component.DISC || finding.component() == Component.DRUM)
                    && (finding.condition() == Condition.CORRODED
                            || finding.condition() == Condition.SCORED
                            || finding.condition() == Condition.CRACKED)
                    && finding.place().axle() != null) {
                facts.unsteadyAxles.draw(new UnsteadyAxle(finding.place().axlePlace(), because("SYM-411", finding)));
            }
        }
    }

    /** A lining or pad of the axle is worn out or loose. */
    private static void sym412(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if ((finding.component() == Component.PAD || finding.component() == Component.SHOE_LINING)
                    && (finding.condition() == Condition.WORN || finding.condition() == Condition.DETACHED)
                    && finding.place().axle() != null) {
                facts.unsteadyAxles.draw(new UnsteadyAxle(finding.place().axlePlace(), because("SYM-412", finding)));
            }
        }
    }

    /** A part that should slide sticks at the axle. */
    private static void sym413(Facts facts) {
        for (Finding finding : facts.findings.all()) {
            if ((finding.component() == Component.WHEEL_CYLINDER
                            || finding.component() == Component.CALLIPER
                            || finding.component() == Component.SLIDE_PIN
                            || finding.component() == Component.PAD
                            || finding.component() == Component.SHOE_LEVER)
                    && (finding.condition() == Condition.SEIZED
                            || finding.condition() == Condition.TIGHT
                            || finding.condition() == Condition.CORRODED
                            || finding.condition() == Condition.NOT_RETURNING)
                    && finding.place().axle() != null) {
                facts.unsteadyAxles.draw(new UnsteadyAxle(finding.place().axlePlace(), because("SYM-413", finding)));
            }
        }
    }

    /** A wheel bearing of the axle has play or is rough. */
    private static void sym414(Facts facts) {
        for (Finding finding : facts.findings.of(Component.HUB_BEARING)) {
            if ((finding.condition() == Condition.WORN
                            || finding.condition() == Condition.LOOSE
                            || finding.condition() == Condition.TIGHT
                            || finding.condition() == Condition.SEIZED)
                    && finding.place().axle() != null) {
                facts.unsteadyAxles.draw(new UnsteadyAxle(finding.place().axlePlace(), because("SYM-414", finding)));
            }
        }
    }

    /** The servo gives too little help. */
    private static void sym415(Facts facts) {
        for (Finding finding : facts.findings.of(Component.SERVO)) {
            if (finding.condition() == Condition.WEAK
                    || finding.condition() == Condition.LEAKING
                    || finding.condition() == Condition.BROKEN
                    || finding.condition() == Condition.SPLIT) {
                for (Axle axle : facts.axles.all()) {
                    facts.unsteadyAxles.draw(
                            new UnsteadyAxle(Place.ofAxle(axle.number()), because("SYM-415", finding)));
                }
            }
        }
    }
}
