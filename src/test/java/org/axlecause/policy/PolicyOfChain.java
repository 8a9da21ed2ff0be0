package org.axlecause.policy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.axlecause.facts.Policy;
import org.axlecause.regimes.Regimes;
import org.axlecause.shared.Json;
import org.axlecause.shared.Problem;

/** The baseline with one clause set by a chain, for tests of other packages. */
public final class PolicyOfChain {

    private static final Policy BASELINE = PolicyFile.baseline();
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);

    private PolicyOfChain() {}

    /** Codes of everything that a policy may set. */
    public static Set<String> clauses() {
        return Vocabulary.released().all().keySet();
    }

    /** The baseline under a clause; one that a chain could not publish in that regime is refused. */
    public static Policy setting(JsonNode clause, String regime) {
        ObjectNode document = Json.mapper().createObjectNode();
        document.putArray("chain").add(clause);
        PolicyDocument read = PolicyDocument.of(document.toString());
        List<Problem.Cause> causes = new ArrayList<>();
        new ClauseCheck(causes).layer("/chain", read.ofChain());
        read.ofChain()
                .forEach(set -> new LawCheck(Regimes.released())
                        .weakerThanLaw(set, List.of(regime), DAY)
                        .ifPresent(weaker -> causes.add(new Problem.Cause("/chain/0", weaker))));
        if (!causes.isEmpty()) {
            throw new IllegalArgumentException(causes.toString());
        }
        return MergedPolicy.of(read, null, null).toPolicy(BASELINE.name(), BASELINE.version(), BASELINE);
    }
}
