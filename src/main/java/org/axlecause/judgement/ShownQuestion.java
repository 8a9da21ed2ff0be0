package org.axlecause.judgement;

import java.util.ArrayList;
import java.util.List;
import org.axlecause.facts.Place;
import org.axlecause.facts.QuestionCode;
import org.axlecause.facts.Reason;

/**
 * An open question as the case document shows it.
 *
 * @param code what is open
 * @param place where
 * @param says the question
 * @param resolve what would resolve it
 * @param because grounds; empty where no rule asked
 */
public record ShownQuestion(QuestionCode code, Place place, String says, String resolve, List<Reason> because) {

    ShownQuestion and(List<Reason> more) {
        List<Reason> all = new ArrayList<>(because);
        more.stream().filter(reason -> !all.contains(reason)).forEach(all::add);
        return new ShownQuestion(code, place, says, resolve, List.copyOf(all));
    }
}
