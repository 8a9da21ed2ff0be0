package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.shared.Problem;
import org.axlecause.shared.RefusedException;
import org.jspecify.annotations.Nullable;

/** Holds a policy to the vocabulary, to its own locks and to the law of every regime among the sites that it covers. */
@ApplicationScoped
class DocumentCheck {

    private static final int LONGEST_MEANING = 500;
    private static final int MOST_CAUSES = 100;
    private static final int MOST_CLAUSES = 5_000;

    private final SiteStore sites;
    private final LawCheck law;

    DocumentCheck(SiteStore sites, LawCheck law) {
        this.sites = sites;
        this.law = law;
    }

    /** The document, or a refusal with everything that is wrong with it by the law of that day. */
    PolicyDocument checked(@Nullable PolicyDocument document, LocalDate day) {
        if (document == null) {
            throw RefusedException.invalidPayload(
                    List.of(new Problem.Cause("", "The body is empty; send means and the clauses of the chain.")));
        }
        List<Problem.Cause> causes = new ArrayList<>();
        Map<String, Site> known = new java.util.TreeMap<>();
        sites.all().forEach(site -> known.put(site.site(), site));
        shape(document, known, causes);
        if (causes.isEmpty()) {
            locks(document, known, causes);
            weakness(document, known, day, causes);
        }
        if (!causes.isEmpty()) {
            throw RefusedException.invalidPayload(
                    causes.stream().limit(MOST_CAUSES).toList());
        }
        return document;
    }

    private static void shape(PolicyDocument document, Map<String, Site> known, List<Problem.Cause> causes) {
        String means = document.means() == null ? "" : document.means().strip();
        if (means.isEmpty() || means.length() > LONGEST_MEANING) {
            causes.add(new Problem.Cause(
                    "/means",
                    "A sentence of 1 to " + LONGEST_MEANING + " characters is expected that says what it is for."));
        }
        List<String> covers = Objects.requireNonNullElse(document.covers(), List.of());
        for (int index = 0; index < covers.size(); index++) {
            if (covers.get(index) == null || !known.containsKey(covers.get(index))) {
                causes.add(new Problem.Cause(
                        "/covers/" + index, "There is no site '" + covers.get(index) + "'. Make it or leave it out."));
            }
        }
        ClauseCheck check = new ClauseCheck(causes);
        check.layer("/chain", document.ofChain());
        Set<String> regions = new HashSet<>();
        known.values().forEach(site -> regions.add(Objects.requireNonNullElse(site.region(), "")));
        int[] clauses = {document.ofChain().size()};
        document.ofRegions().forEach((region, layer) -> {
            String at = "/regions/" + escaped(region);
            if (!regions.contains(region) || region.isEmpty()) {
                causes.add(new Problem.Cause(
                        at, "No site is of the region '" + region + "'. Correct it or leave it out."));
            }
            layer(check, at, layer, causes);
            clauses[0] += layer == null ? 0 : layer.size();
        });
        document.ofSites().forEach((site, layer) -> {
            String at = "/sites/" + escaped(site);
            if (!known.containsKey(site) || !document.covers(site)) {
                causes.add(new Problem.Cause(
                        at, "'" + site + "' is no site that this policy covers. Correct it or leave it out."));
            }
            layer(check, at, layer, causes);
            clauses[0] += layer == null ? 0 : layer.size();
        });
        if (clauses[0] > MOST_CLAUSES) {
            causes.add(new Problem.Cause(
                    "",
                    clauses[0] + " clauses are set; at most " + MOST_CLAUSES + " are taken. Set more of them above."));
        }
    }

    private static void layer(
            ClauseCheck check, String at, @Nullable List<ClauseWanted> layer, List<Problem.Cause> causes) {
        if (layer == null) {
            causes.add(new Problem.Cause(at, "null is no layer; expected is a list of clauses."));
        } else {
            check.layer(at, layer);
        }
    }

    private static void locks(PolicyDocument document, Map<String, Site> known, List<Problem.Cause> causes) {
        MergedPolicy chain = MergedPolicy.of(document, null, null);
        document.ofRegions().forEach((region, layer) -> locked(chain, "/regions/" + escaped(region), layer, causes));
        document.ofSites().forEach((site, layer) -> {
            Site found = known.get(site);
            MergedPolicy above = MergedPolicy.of(document, found == null ? null : found.region(), null);
            locked(above, "/sites/" + escaped(site), layer, causes);
        });
    }

    private static void locked(MergedPolicy above, String at, List<ClauseWanted> layer, List<Problem.Cause> causes) {
        for (int index = 0; index < layer.size(); index++) {
            ClauseWanted clause = layer.get(index);
            Layer lock = above.lockOf(clause);
            if (lock != null) {
                causes.add(new Problem.Cause(
                        at + "/" + index,
                        "The clause '" + clause.key() + "' is locked by the " + lock
                                + ". Leave it out here, or have it unlocked there."));
            }
        }
    }

    private void weakness(PolicyDocument document, Map<String, Site> known, LocalDate day, List<Problem.Cause> causes) {
        weakness("/chain", document.ofChain(), regimes(document, known, site -> true), day, causes);
        document.ofRegions()
                .forEach((region, layer) -> weakness(
                        "/regions/" + escaped(region),
                        layer,
                        regimes(document, known, site -> region.equals(site.region())),
                        day,
                        causes));
        document.ofSites()
                .forEach((code, layer) -> weakness(
                        "/sites/" + escaped(code),
                        layer,
                        regimes(document, known, site -> code.equals(site.site())),
                        day,
                        causes));
    }

    private void weakness(
            String at, List<ClauseWanted> layer, List<String> regimes, LocalDate day, List<Problem.Cause> causes) {
        for (int index = 0; index < layer.size(); index++) {
            String pointer = at + "/" + index;
            law.weakerThanLaw(layer.get(index), regimes, day)
                    .ifPresent(words -> causes.add(new Problem.Cause(pointer, words)));
        }
    }

    private static List<String> regimes(PolicyDocument document, Map<String, Site> known, Predicate<Site> which) {
        TreeSet<String> regimes = new TreeSet<>();
        known.values().stream()
                .filter(site -> document.covers(site.site()))
                .filter(which)
                .forEach(site -> regimes.add(site.regime()));
        return List.copyOf(regimes);
    }

    private static String escaped(String member) {
        return member.replace("~", "~0").replace("/", "~1");
    }
}
