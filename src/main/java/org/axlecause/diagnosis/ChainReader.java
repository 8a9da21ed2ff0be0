package org.axlecause.diagnosis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.axlecause.facts.CauseCode;
import org.axlecause.shared.YamlNode;

/** Reads what leads to what and refuses circles and ways that end nowhere. */
final class ChainReader {

    final Map<String, State> states = new LinkedHashMap<>();
    final List<Edge> edges = new ArrayList<>();
    private final YamlNode root;
    private final EvidenceReader evidence;
    private final Map<CauseCode, Cause> causes;

    ChainReader(YamlNode root, EvidenceReader evidence, Map<CauseCode, Cause> causes) {
        this.root = root;
        this.evidence = evidence;
        this.causes = causes;
        readChain();
    }

    private void readChain() {
        for (YamlNode node : root.only("verified", "source", "states", "edges").items("states")) {
            node.only("code", "text", "seen-by");
            for (YamlNode seen : node.items("seen-by")) {
                if (!evidence.findings.containsKey(seen.text())) {
                    throw seen.wrong("there is no finding '" + seen.text() + "'", "mend the code");
                }
            }
            State state = new State(node.text("code"), node.text("text"), node.texts("seen-by"));
            if (isCause(state.code())
                    || evidence.symptomOf(state.code()) != null
                    || states.put(state.code(), state) != null) {
                throw node.wrong("the code '" + state.code() + "' is taken", "name the state otherwise");
            }
        }
        Map<String, YamlNode> lines = new LinkedHashMap<>();
        for (YamlNode node : root.items("edges")) {
            node.only("from", "to", "place");
            String from = node.text("from");
            String to = node.text("to");
            if (!isCause(from) && !states.containsKey(from)) {
                throw node.wrong("there is no cause or state '" + from + "'", "mend the code");
            }
            if (!isCause(to) && !states.containsKey(to) && evidence.symptomOf(to) == null) {
                throw node.wrong("there is no cause, state or symptom '" + to + "'", "mend the code");
            }
            Reach reach = node.optionalCode("place", Reach.class);
            edges.add(new Edge(from, to, reach == null ? Reach.SAME : reach));
            lines.put(from + " " + to, node);
        }
        refuseCircles(lines);
        refuseSymptomsWithoutChain();
    }

    private static boolean isCause(String code) {
        for (CauseCode cause : CauseCode.values()) {
            if (cause.toString().equals(code)) {
                return true;
            }
        }
        return false;
    }

    private void refuseCircles(Map<String, YamlNode> lines) {
        Set<String> done = new HashSet<>();
        for (Edge edge : edges) {
            walk(edge.from(), new ArrayList<>(), done, lines);
        }
    }

    private void walk(String code, List<String> path, Set<String> done, Map<String, YamlNode> lines) {
        if (done.contains(code)) {
            return;
        }
        path.add(code);
        for (Edge edge : edges) {
            if (edge.from().equals(code)) {
                if (path.contains(edge.to())) {
                    throw lines.getOrDefault(code + " " + edge.to(), root)
                            .wrong(
                                    "the edges run in a circle: " + String.join(", ", path) + ", " + edge.to(),
                                    "take one of these edges out");
                }
                walk(edge.to(), path, done, lines);
            }
        }
        path.remove(path.size() - 1);
        done.add(code);
    }

    private void refuseSymptomsWithoutChain() {
        for (Cause cause : causes.values()) {
            Set<String> reached = new HashSet<>();
            List<String> open = new ArrayList<>(List.of(cause.code().toString()));
            while (!open.isEmpty()) {
                String code = open.remove(open.size() - 1);
                if (reached.add(code)) {
                    edges.stream().filter(edge -> edge.from().equals(code)).forEach(edge -> open.add(edge.to()));
                }
            }
            for (Link link : cause.links()) {
                if (!link.finding() && !reached.contains(link.evidence())) {
                    throw root.member("edges")
                            .wrong(
                                    "no edges lead from '" + cause.code() + "' to its symptom '" + link.evidence()
                                            + "'",
                                    "add the steps or remove the symptom from the cause");
                }
            }
        }
    }
}
