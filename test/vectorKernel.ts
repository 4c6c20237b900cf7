import { bringVectorKernel } from "#tasks/kernel/vectorKernel";

bringVectorKernel();
