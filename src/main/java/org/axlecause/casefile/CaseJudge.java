package org.axlecause.casefile;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.Map;
import org.axlecause.facts.EntryId;
import org.axlecause.facts.History;
import org.jspecify.annotations.Nullable;

/** Turns the history of a case into its document; an interface so that a test can judge badly on purpose. */
public interface CaseJudge {

    /**
     * Judges a locked case from its stored history inside the open transaction and keeps document, rows and, at
     * decisions and closing, the judgement as such.
     *
     * @return the case document, exactly as it is served
     */
    String judgeAndKeep(String reference);

    /**
     * Judges a history that is nowhere stored, by the sites, policies and price lists of the open transaction's tenant.
     *
     * @param data data of its events as they would be stored
     * @param asOf day of policy and limits; null means the day of the presentation
     * @return the case document, exactly as it is served
     */
    String judge(History history, Map<EntryId, JsonNode> data, @Nullable LocalDate asOf);
}
