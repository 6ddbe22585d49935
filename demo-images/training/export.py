"""The network as ONNX with its weights in half precision, turned back to single when it is loaded."""

import hashlib

import numpy as np
import onnx
import onnxruntime
import torch
from onnx import TensorProto, helper, numpy_helper

class Toes(torch.nn.Module):
    def __init__(self, net):
        super().__init__()
        self.net = net

    def forward(self, strip):
        return self.net(strip)[0]


def export(model, path, example, whole=False, names=None):
    # The network must be as it was trained, batch means and all: a check against it follows.
    plain = model.float().cpu().eval().to(memory_format=torch.contiguous_format)
    net = plain if whole or names else Toes(plain)
    names = names or (("photo", "bead") if whole else ("strip", "toes"))
    torch.onnx.export(net, example, path, input_names=[names[0]], output_names=[names[1]], opset_version=17, dynamo=False)
    with torch.no_grad():
        here = net(example.contiguous()).numpy()

    def differs(name):
        session = onnxruntime.InferenceSession(path, providers=["CPUExecutionProvider"])
        there = session.run(None, {names[0]: example.contiguous().numpy()})[0]
        print(name, "differs at most", float(np.abs(here - there).max()), "of", float(np.abs(here).max()), flush=True)

    differs("single precision")
    with torch.no_grad(), torch.backends.mkldnn.flags(enabled=False):
        plainly = net(example.contiguous()).numpy()
    print("processor without oneDNN", float(np.abs(here - plainly).max()), flush=True)
    if torch.cuda.is_available():
        with torch.no_grad():
            torch.backends.cudnn.allow_tf32 = torch.backends.cuda.matmul.allow_tf32 = False
            there = net.cuda()(example.cuda()).cpu().numpy()
            net.cpu()
        print("accelerator", float(np.abs(here - there).max()), flush=True)
        here = there
        differs("single precision, from the accelerator")
    graph = onnx.load(path)
    keep, casts = [], []
    for tensor in graph.graph.initializer:
        values = numpy_helper.to_array(tensor)
        if values.dtype != np.float32 or values.size < 64:
            keep.append(tensor)
            continue
        keep.append(numpy_helper.from_array(values.astype(np.float16), tensor.name + "_half"))
        casts.append(helper.make_node("Cast", [tensor.name + "_half"], [tensor.name], to=TensorProto.FLOAT))
    del graph.graph.initializer[:]
    graph.graph.initializer.extend(keep)
    nodes = list(graph.graph.node)
    del graph.graph.node[:]
    graph.graph.node.extend(casts + nodes)
    graph.producer_name, graph.producer_version, graph.doc_string = "toeline", "1", ""
    onnx.checker.check_model(graph)
    onnx.save(graph, path)
    differs("half precision")
    data = open(path, "rb").read()
    return hashlib.sha256(data).hexdigest(), len(data)
