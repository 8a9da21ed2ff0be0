package org.axlecause.policy;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.axlecause.access.Actor;
import org.axlecause.access.Site;
import org.axlecause.access.SiteStore;
import org.axlecause.facts.BrakeBuild;
import org.axlecause.facts.BrakeSystem;
import org.axlecause.facts.MeasuredQuantity;
import org.axlecause.facts.Necessity;
import org.axlecause.facts.Party;
import org.axlecause.facts.ScopeAction;
import org.axlecause.facts.ScopeExtent;
import org.axlecause.facts.ScopeItem;
import org.axlecause.shared.TenantTransaction;
import org.jspecify.annotations.Nullable;

/** Shows the layers of a policy to those who edit them: each clause with what it means, what holds above and what is set. */
@ApplicationScoped
public class ReadLayers {

    private static final Map<String, List<String>> CHOICES = Map.of(
            "necessity",
            Stream.concat(codes(Necessity.class), Stream.of(MergedPolicy.NO_NECESSITY))
                    .toList(),
            "extent",
            codes(ScopeExtent.class).filter(code -> !code.equals("circuit")).toList(),
            "figure",
            Arrays.stream(LimitedFigure.values())
                    .map(figure -> figure.kind().toString())
                    .toList(),
            "brake",
            codes(BrakeSystem.class).filter(code -> !code.equals("secondary")).toList(),
            "build",
            codes(BrakeBuild.class).toList(),
            "action",
            codes(ScopeAction.class).sorted().toList(),
            "item",
            codes(ScopeItem.class).sorted().toList(),
            "quantity",
            codes(MeasuredQuantity.class).sorted().toList(),
            "by",
            codes(Party.class).toList());

    private final PolicyDraftStore drafts;
    private final ReadPolicies read;
    private final LayerRights rights;
    private final SiteStore sites;
    private final TenantTransaction transaction;

    ReadLayers(
            PolicyDraftStore drafts,
            ReadPolicies read,
            LayerRights rights,
            SiteStore sites,
            TenantTransaction transaction) {
        this.drafts = drafts;
        this.read = read;
        this.rights = rights;
        this.sites = sites;
        this.transaction = transaction;
    }

    /**
     * What an edit begins with: the draft, or where there is none the newest version, or nothing.
     *
     * @param draft the draft; null where there is none yet
     * @param document its document as far as the actor may see it
     */
    public record Beginning(@Nullable PolicyDraft draft, PolicyDocument document) {}

    /**
     * A clause of a layer.
     *
     * @param code its code
     * @param means what it means
     * @param takes the members that it takes
     * @param repeated whether it is set once for each figure or line
     * @param unit unit of the value; null where it takes none
     * @param source source of the baseline's value
     * @param above what holds where this layer leaves it alone; null where nothing does
     * @param from layer that this comes from
     * @param lockedBy layer above that has locked it; null where none has
     * @param set what this layer sets; null where it sets nothing
     */
    public record Line(
            String code,
            String means,
            Set<String> takes,
            boolean repeated,
            @Nullable String unit,
            String source,
            @Nullable ClauseWanted above,
            String from,
            @Nullable String lockedBy,
            @Nullable ClauseWanted set) {}

    /** What an edit of a policy begins with. */
    public Beginning beginning(String name, Actor actor) {
        return transaction.call(actor.tenant(), () -> {
            PolicyDraft draft = drafts.find(name).orElse(null);
            PolicyDocument latest = draft == null ? read.latest(name) : draft.document();
            rights.refuseUnseen(name, latest, actor);
            return new Beginning(draft, rights.shown(latest == null ? PolicyDocument.EMPTY : latest, actor));
        });
    }

    /** Every clause as a layer sets it; a clause of figures or lines stands once for each that is set, and once more to add one. */
    public List<Line> lines(PolicyDocument document, LayerName layer, Actor actor) {
        Map<String, EffectiveClause> above =
                above(document.with(layer, List.of()), layer, actor).all();
        Map<String, ClauseWanted> set = new TreeMap<>();
        document.of(layer).forEach(clause -> set.put(clause.key(), clause));
        List<Line> lines = new ArrayList<>();
        for (ClauseWord word : Vocabulary.released().all().values()) {
            Stream<String> keys = Stream.concat(
                    above.entrySet().stream()
                            .filter(each ->
                                    word.code().equals(each.getValue().set().clause()))
                            .map(Map.Entry::getKey),
                    set.entrySet().stream()
                            .filter(each -> word.code().equals(each.getValue().clause()))
                            .map(Map.Entry::getKey));
            keys.distinct().sorted().forEach(key -> lines.add(line(word, above.get(key), set.get(key))));
            if (word.isRepeated()) {
                lines.add(line(word, null, null));
            }
        }
        return lines;
    }

    /** What the second of two documents sets otherwise, in words. */
    public List<String> changes(PolicyDocument before, PolicyDocument after) {
        return ComparePolicies.of(before, after).words();
    }

    /** The codes that a member of a clause may have; none where it is a number. */
    public static List<String> choices(String member) {
        return CHOICES.getOrDefault(member, List.of());
    }

    private MergedPolicy above(PolicyDocument document, LayerName layer, Actor actor) {
        return transaction.call(
                actor.tenant(),
                () -> MergedPolicy.of(
                        document,
                        layer.layer() == Layer.SITE
                                ? sites.find(layer.code()).map(Site::region).orElse(null)
                                : null,
                        null));
    }

    private static Line line(ClauseWord word, @Nullable EffectiveClause above, @Nullable ClauseWanted set) {
        Layer lock = above == null ? null : above.lockedBy();
        return new Line(
                word.code(),
                word.means(),
                word.takes(),
                word.isRepeated(),
                word.unit(),
                word.source(),
                above == null ? null : above.set(),
                (above == null ? Layer.BASELINE : above.from()).toString(),
                lock == null ? null : lock.toString(),
                set);
    }

    private static <E extends Enum<E>> Stream<String> codes(Class<E> codes) {
        return Arrays.stream(codes.getEnumConstants()).map(Object::toString);
    }
}
