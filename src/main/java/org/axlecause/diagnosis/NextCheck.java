package org.axlecause.diagnosis;

import java.math.BigDecimal;
import java.util.List;
import org.axlecause.facts.Agent;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.Candidate;
import org.axlecause.facts.CautionCode;
import org.axlecause.facts.CheckCode;
import org.axlecause.facts.Component;
import org.axlecause.facts.Condition;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Place;
import org.jspecify.annotations.Nullable;

/**
 * A check worth making.
 *
 * @param check the check
 * @param text how it is done
 * @param place where
 * @param expectedInformation bits that it is expected to tell
 * @param minutes minutes it takes, access from the present state included
 * @param access how far the vehicle must be taken apart, 0 on its wheels to 4 hydraulics opened
 * @param risk harm it can do to parts
 * @param cautions cautions before it
 * @param lookingOver whether it is asked because the axle is opened, whatever it tells
 * @param wouldSettle causes that its answers can prove or rule out
 * @param answers what can come out; the last one is that the part can't be got at
 */
public record NextCheck(
        CheckCode check,
        String text,
        Place place,
        BigDecimal expectedInformation,
        int minutes,
        int access,
        Risk risk,
        List<CautionCode> cautions,
        boolean lookingOver,
        List<Candidate> wouldSettle,
        List<Answer> answers) {

    public NextCheck {
        cautions = List.copyOf(cautions);
        wouldSettle = List.copyOf(wouldSettle);
        answers = List.copyOf(answers);
    }

    /**
     * One answer, as the content of an event that a page or a system can fill in and send.
     *
     * @param says the answer in words
     * @param component part of a finding; null for a roller test
     * @param condition state of the part; null for a roller test
     * @param place where
     * @param agent liquid to name, or null
     * @param rollerTest brake of the roller test to record; null for a finding
     * @param blanks measured values to fill in
     */
    public record Answer(
            String says,
            @Nullable Component component,
            @Nullable Condition condition,
            Place place,
            @Nullable Agent agent,
            @Nullable BrakeSystem rollerTest,
            List<Blank> blanks) {

        public Answer {
            blanks = List.copyOf(blanks);
        }
    }

    /**
     * A value to fill in.
     *
     * @param name name of the blank
     * @param quantity what is measured; null for a reading of the rollers
     * @param unit UCUM code of the unit it is asked in
     */
    public record Blank(String name, @Nullable MeasuredQuantity quantity, String unit) {}
}
