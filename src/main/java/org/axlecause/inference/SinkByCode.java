package org.axlecause.inference;

import java.io.ObjectInput;
import java.io.ObjectOutput;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.drools.base.base.ClassObjectType;
import org.drools.core.common.BaseNode;
import org.drools.core.common.InternalFactHandle;
import org.drools.core.common.PropagationContext;
import org.drools.core.common.ReteEvaluator;
import org.drools.core.impl.InternalRuleBase;
import org.drools.core.reteoo.AlphaNode;
import org.drools.core.reteoo.EmptyObjectSinkAdapter;
import org.drools.core.reteoo.ModifyPreviousTuples;
import org.drools.core.reteoo.ObjectSink;
import org.drools.core.reteoo.ObjectSinkPropagator;
import org.drools.core.reteoo.ObjectSource;
import org.drools.core.reteoo.ObjectTypeNode;
import org.jspecify.annotations.Nullable;
import org.kie.api.KieBase;

/**
 * Hands a fact on to the constraints that its codes meet, looked up by the code. The engine looks numbers and texts up in
 * this way, but tries the constraints on enums one after the other, of which some types of facts have dozens.
 */
final class SinkByCode implements ObjectSinkPropagator {

    private static final long serialVersionUID = 1;

    /** From so many constraints on one property on, looking up is less work than trying; the engine's own threshold. */
    private static final int WORTH_IT = 3;

    private final transient ObjectSinkPropagator whole;
    private final transient List<Index> indexes;
    private final transient ObjectSinkPropagator others;

    private SinkByCode(ObjectSinkPropagator whole, List<Index> indexes, ObjectSinkPropagator others) {
        this.whole = whole;
        this.indexes = indexes;
        this.others = others;
    }

    /** Lets a rule base look codes up. */
    static void into(KieBase kieBase) {
        for (ObjectTypeNode type : ((InternalRuleBase) kieBase).getRete().getObjectTypeNodes()) {
            if (type.getObjectType() instanceof ClassObjectType fact) {
                into(type, fact.getClassType());
            }
        }
    }

    private static void into(ObjectSource source, Class<?> fact) {
        ObjectSinkPropagator whole = source.getObjectSinkPropagator();
        if (whole instanceof SinkByCode) {
            return;
        }
        for (ObjectSink sink : whole.getSinks()) {
            if (sink instanceof AlphaNode node) {
                into(node, fact);
            }
        }
        SinkByCode byCode = of(whole, fact);
        if (byCode != null) {
            source.setObjectSinkPropagator(byCode);
        }
    }

    private static @Nullable SinkByCode of(ObjectSinkPropagator whole, Class<?> fact) {
        Map<Method, Index> indexes = new LinkedHashMap<>();
        Map<ObjectSink, CodeConstraint> asking = new LinkedHashMap<>();
        for (ObjectSink sink : whole.getSinks()) {
            CodeConstraint constraint =
                    sink instanceof AlphaNode node ? CodeConstraint.of(fact, node.getConstraint()) : null;
            if (constraint != null) {
                asking.put(sink, constraint);
                indexes.computeIfAbsent(constraint.property(), Index::new).add((AlphaNode) sink, constraint);
            }
        }
        indexes.values().removeIf(index -> index.nodes.size() < WORTH_IT);
        if (indexes.isEmpty()) {
            return null;
        }
        ObjectSinkPropagator others = EmptyObjectSinkAdapter.getInstance();
        for (ObjectSink sink : whole.getSinks()) {
            CodeConstraint constraint = asking.get(sink);
            if (constraint == null || !indexes.containsKey(constraint.property())) {
                others = others.addObjectSink(sink, WORTH_IT, WORTH_IT);
            }
        }
        return new SinkByCode(whole, List.copyOf(indexes.values()), others);
    }

    @Override
    public void propagateAssertObject(InternalFactHandle handle, PropagationContext context, ReteEvaluator evaluator) {
        for (Index index : indexes) {
            for (AlphaNode node : index.metBy(handle.getObject())) {
                node.getObjectSinkPropagator().propagateAssertObject(handle, context, evaluator);
            }
        }
        others.propagateAssertObject(handle, context, evaluator);
    }

    @Override
    public void propagateModifyObject(
            InternalFactHandle handle,
            ModifyPreviousTuples tuples,
            PropagationContext context,
            ReteEvaluator evaluator) {
        for (Index index : indexes) {
            for (AlphaNode node : index.metBy(handle.getObject())) {
                node.getObjectSinkPropagator().propagateModifyObject(handle, tuples, context, evaluator);
            }
        }
        others.propagateModifyObject(handle, tuples, context, evaluator);
    }

    @Override
    public void byPassModifyToBetaNode(
            InternalFactHandle handle,
            ModifyPreviousTuples tuples,
            PropagationContext context,
            ReteEvaluator evaluator) {
        for (Index index : indexes) {
            for (AlphaNode node : index.metBy(handle.getObject())) {
                node.getObjectSinkPropagator().byPassModifyToBetaNode(handle, tuples, context, evaluator);
            }
        }
        others.byPassModifyToBetaNode(handle, tuples, context, evaluator);
    }

    /** In the order in which a fact meets them. */
    @Override
    public ObjectSink[] getSinks() {
        return Stream.concat(indexes.stream().flatMap(index -> index.nodes.stream()), Stream.of(others.getSinks()))
                .toArray(ObjectSink[]::new);
    }

    /** Leaves the constraints to the engine again, which is right, if slower. */
    @Override
    public ObjectSinkPropagator addObjectSink(ObjectSink sink, int hashedFrom, int rangedFrom) {
        return whole.addObjectSink(sink, hashedFrom, rangedFrom);
    }

    @Override
    public ObjectSinkPropagator removeObjectSink(ObjectSink sink) {
        return whole.removeObjectSink(sink);
    }

    @Override
    public BaseNode getMatchingNode(BaseNode candidate) {
        return whole.getMatchingNode(candidate);
    }

    @Override
    public int size() {
        return whole.size();
    }

    @Override
    public boolean isEmpty() {
        return false;
    }

    @Override
    public void doLinkRiaNode(ReteEvaluator evaluator) {
        others.doLinkRiaNode(evaluator);
    }

    @Override
    public void doUnlinkRiaNode(ReteEvaluator evaluator) {
        others.doUnlinkRiaNode(evaluator);
    }

    @Override
    public void writeExternal(ObjectOutput out) {
        throw new UnsupportedOperationException("A rule base is compiled, never written out.");
    }

    @Override
    public void readExternal(ObjectInput in) {
        throw new UnsupportedOperationException("A rule base is compiled, never read in.");
    }

    /** The constraints on one property, by code. */
    private static final class Index {

        private static final AlphaNode[] NONE = {};

        private final Method property;
        private final List<AlphaNode> nodes = new ArrayList<>();
        private final AlphaNode[][] byCode;

        Index(Method property) {
            this.property = property;
            this.byCode = new AlphaNode[property.getReturnType().getEnumConstants().length][0];
        }

        @SuppressWarnings("EnumOrdinal") // Why: the array is made in this run, so no ordinal outlives it.
        void add(AlphaNode node, CodeConstraint constraint) {
            nodes.add(node);
            for (Enum<?> code : constraint.codes()) {
                AlphaNode[] met = Arrays.copyOf(byCode[code.ordinal()], byCode[code.ordinal()].length + 1);
                met[met.length - 1] = node;
                byCode[code.ordinal()] = met;
            }
        }

        @SuppressWarnings("EnumOrdinal") // Why: the array is made in this run, so no ordinal outlives it.
        AlphaNode[] metBy(Object fact) {
            try {
                Enum<?> code = (Enum<?>) property.invoke(fact);
                return code == null ? NONE : byCode[code.ordinal()];
            } catch (IllegalAccessException | InvocationTargetException unreadable) {
                throw new IllegalStateException("Can't read " + property.getName() + " of " + fact, unreadable);
            }
        }
    }
}
